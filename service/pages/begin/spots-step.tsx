import type { Problem } from "../../../core/problem.ts";
import type { Spot } from "../../../core/site/spot.ts";
import { type FormView, ProblemList } from "../forms/fields.tsx";
import type { Typed } from "../forms/form-problems.ts";
import { READY_SPOT_KEYS, READY_SPOTS } from "./ready-spots.ts";

const takeField = (key: string) => `take.${key}`;
const nameField = (key: string) => `name.${key}`;

/** The ready-made spots that were ticked, in walking order as listed. */
export function spotsOfForm(typed: Typed, formId: string): { spots: Spot[]; problems: Problem[] } {
  const taken = READY_SPOT_KEYS.filter((key) => typed[takeField(key)] === "yes");
  const spots = taken.map((key, index) => ({
    ...READY_SPOTS[key],
    id: `${formId}.${key}`,
    name: (typed[nameField(key)] ?? "").trim(),
    walkOrder: index + 1,
  }));
  const nameless = taken.filter((_, index) => spots[index]?.name === "");
  return {
    spots,
    problems: [
      ...(taken.length === 0 ? [{ code: "no-spot", path: ["spots"] }] : []),
      ...nameless.map((key) => ({ code: "missing", path: [nameField(key)] })),
    ],
  };
}

/** The places where pots stand, each with what it lets through. */
export function SpotsStep({ form, formId }: { form: FormView; formId: string }) {
  const { say } = form.words;
  return (
    <form method="post" action="/begin/spots">
      <ProblemList form={form} />
      <input type="hidden" name="formId" value={formId} />
      <fieldset class="group" id="spots">
        <legend>{say("begin.spots.legend")}</legend>
        <ul class="plain">
          {READY_SPOT_KEYS.map((key) => (
            <li class="ready">
              <label class="choice">
                <input
                  type="checkbox"
                  name={takeField(key)}
                  value="yes"
                  checked={form.typed[takeField(key)] === "yes"}
                />
                <span>
                  <strong>{say(`ready-spot.${key}`)}</strong> {say(`ready-spot-text.${key}`)}
                </span>
              </label>
              <input
                type="text"
                id={nameField(key)}
                name={nameField(key)}
                aria-label={say("begin.spots.name-of", { spot: say(`ready-spot.${key}`) })}
                value={form.typed[nameField(key)] ?? say(`ready-spot.${key}`)}
                autocomplete="off"
              />
            </li>
          ))}
        </ul>
      </fieldset>
      <p class="hint">{say("begin.spots.later")}</p>
      <button type="submit">{say("begin.spots.use")}</button>
    </form>
  );
}
