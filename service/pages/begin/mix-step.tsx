import type { Mix } from "../../../core/mix/mix.ts";
import type { Problem } from "../../../core/problem.ts";
import { type FormView, ProblemList, TextField } from "../forms/fields.tsx";
import type { Typed } from "../forms/form-problems.ts";
import { MixFields, partsOfForm } from "../forms/mix-fields.tsx";
import { nameProblems } from "../forms/name-problems.ts";
import { READY_MIX_KEYS } from "./ready-mixes.ts";

/** The mix that was typed, beside those that are known. */
export function mixOfForm(
  typed: Typed,
  { id, known }: { id: string; known: readonly Mix[] },
): { mix: Mix; problems: Problem[] } {
  const { parts, problems } = partsOfForm(typed);
  const name = (typed.name ?? "").trim();
  const mix: Mix = { id, name, recipe: { kind: "parts", parts } };
  const wrongName =
    name === "" ? [{ code: "missing", path: ["name"] }] : nameProblems(mix, known, "mix-name-taken");
  return { mix, problems: [...wrongName, ...problems] };
}

/** A mix by parts, from one of a few beginnings. */
export function MixStep({ form, formId, action }: { form: FormView; formId: string; action: string }) {
  const { say } = form.words;
  return (
    <>
      <p>{say("mix.start-from")}</p>
      <ul class="starts">
        {READY_MIX_KEYS.map((key) => (
          <li>
            <a class="button quiet" href={`?start=${key}`}>
              {say(`ready-mix.${key}`)}
            </a>
          </li>
        ))}
      </ul>
      <form method="post" action={action}>
        <ProblemList form={form} labels={{ name: say("field.mix-name") }} />
        <input type="hidden" name="formId" value={formId} />
        <TextField form={form} name="name" label={say("field.mix-name")} />
        <MixFields form={form} />
        <p class="deed-note">{say("mix.dust")}</p>
        <button type="submit">{say("mix.keep")}</button>
      </form>
    </>
  );
}
