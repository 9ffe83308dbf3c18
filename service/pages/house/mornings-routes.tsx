import { Hono } from "hono";
import { type Receiver, receivers } from "../../notify/receivers.ts";
import type { Words } from "../../words/words.ts";
import { fieldTexts } from "../forms/form-body.ts";
import type { PageContext } from "../page-context.ts";

/** Who gets a message on a morning that asks for nothing. */
export function morningsRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.post("/house/mornings", async (c) => {
    const wanted = new Set(await fieldTexts(c, "wants"));
    const everybody = (await receivers(context)).map(({ id }) => id);
    await context.store.choices.putSkipEmpty(everybody.filter((id) => !wanted.has(id)));
    return c.redirect("/house", 303);
  });
  return routes;
}

export interface MorningsProps {
  readonly receivers: readonly Receiver[];
  readonly skipping: readonly string[];
  readonly words: Words;
}

/** What the part of the page below shows. */
export async function morningsProps(context: PageContext): Promise<MorningsProps> {
  const { store, words } = context;
  return { receivers: await receivers(context), skipping: await store.choices.skipEmpty(), words };
}

export function MorningsPart({ receivers: all, skipping, words: { say } }: MorningsProps) {
  return (
    <section>
      <h2>{say("house.mornings")}</h2>
      <p>{say("house.mornings-text")}</p>
      <form method="post" action="/house/mornings">
        <div class="choices">
          {all.map(({ id, name }) => (
            <label class="choice">
              <input type="checkbox" name="wants" value={id} checked={!skipping.includes(id)} />
              <span>{name}</span>
            </label>
          ))}
        </div>
        <button type="submit">{say("house.keep-mornings")}</button>
      </form>
    </section>
  );
}
