import { type Context, Hono } from "hono";
import { readLink } from "../../notify/signed-link.ts";
import type { StoredChannelOf } from "../../store/person.ts";
import { wordsFor } from "../../words/words.ts";
import type { PageContext } from "../page-context.ts";
import { PlainMessage } from "../plain-message.tsx";
import { answerPage, faultPage, LINK_HEADERS } from "./answer-frame.tsx";

const NOT_FOUND = 404;

/** Stops mail to one address, by the link in its head (RFC 8058: one POST, no question) or by hand on the page. */
export function stopMailRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/stop-mail/:token", (c) => withChannel(c, context, (channel) => page(context, channel)));
  routes.post("/stop-mail/:token", (c) =>
    withChannel(c, context, async (channel) => {
      const stopped = { ...channel, kinds: [] };
      await context.store.channels.put(stopped);
      return page(context, stopped);
    }),
  );
  return routes;
}

async function withChannel(
  c: Context,
  context: PageContext,
  go: (channel: StoredChannelOf<"mail">) => Promise<string>,
): Promise<Response> {
  const { store, post, now, words } = context;
  for (const [name, value] of Object.entries(LINK_HEADERS)) c.header(name, value);
  const read = readLink(c.req.param("token") ?? "", { key: post.signing.key, nowUtcMs: now() });
  const channelId = read.ok && read.claims.purpose === "stop-mail" ? read.claims.channelId : "";
  const channel = await store.channels.get(channelId);
  if (channel?.kind !== "mail") return c.html(faultPage(words, "link-broken"), NOT_FOUND);
  return c.html(await go(channel));
}

async function page(context: PageContext, { personId, kinds }: StoredChannelOf<"mail">): Promise<string> {
  const person = await context.store.people.get(personId);
  const words = person ? wordsFor(person.locale, person.units) : context.words;
  const { say } = words;
  const isOver = kinds.length === 0;
  const title = say("stop-mail.title");
  return answerPage({
    words,
    title,
    children: (
      <PlainMessage title={title} text={say(isOver ? "stop-mail.over" : "stop-mail.text")}>
        {!isOver && (
          <form method="post">
            <button type="submit">{say("stop-mail.keep")}</button>
          </form>
        )}
      </PlainMessage>
    ),
  });
}
