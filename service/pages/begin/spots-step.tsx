import type { Problem } from "../../../core/problem.ts";
import type { Spot } from "../../../core/site/spot.ts";
import { type FormView, ProblemList } from "../forms/fields.tsx";
import { fieldProblem, type Typed } from "../forms/form-problems.ts";
import { nameProblems } from "../forms/name-problems.ts";
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
  const wrong = taken.flatMap((key, index) =>
    nameFaults(spots[index]!, spots).map(({ code }) => ({ code, path: [nameField(key)] })),
  );
  return {
    spots,
    problems: [...(taken.length === 0 ? [{ code: "no-spot", path: ["spots"] }] : []), ...wrong],
  };
}

function nameFaults(spot: Spot, among: readonly Spot[]): Problem[] {
  return spot.name === ""
    ? [{ code: "missing", path: ["name"] }]
    : nameProblems(spot, among, "spot-name-taken");
}

/** The places where pots stand, each with what it lets through. */
export function SpotsStep({ form, formId }: { form: FormView; formId: string }) {
  const { say } = form.words;
  const nameProblem = (key: string) => fieldProblem(form.problems, nameField(key), form.words);
  return (
    <form method="post" action="/begin/spots">
      <ProblemList form={form} />
      <input type="hidden" name="formId" value={formId} />
      <fieldset class="group" id="spots">
        <legend>{say("begin.spots.legend")}</legend>
        <ul class="plain">
          {READY_SPOT_KEYS.map((key) => (
            <li class={nameProblem(key) === undefined ? "ready" : "ready field-wrong"}>
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
                aria-invalid={nameProblem(key) === undefined ? undefined : "true"}
                aria-describedby={nameProblem(key) === undefined ? undefined : `${nameField(key)}-problem`}
              />
              {nameProblem(key) !== undefined && (
                <p class="problem" id={`${nameField(key)}-problem`}>
                  {nameProblem(key)}
                </p>
              )}
            </li>
          ))}
        </ul>
      </fieldset>
      <p class="hint">{say("begin.spots.later")}</p>
      <button type="submit">{say("begin.spots.use")}</button>
    </form>
  );
}
