import type { Mix } from "../../../core/mix/mix.ts";
import type { Problem } from "../../../core/problem.ts";
import { type FormView, ProblemList, TextField } from "../forms/fields.tsx";
import type { Typed } from "../forms/form-problems.ts";
import { MixFields, partsOfForm } from "../forms/mix-fields.tsx";
import { READY_MIX_KEYS } from "./ready-mixes.ts";

/** The mix that was typed. */
export function mixOfForm(typed: Typed, id: string): { mix: Mix; problems: Problem[] } {
  const { parts, problems } = partsOfForm(typed);
  const name = (typed.name ?? "").trim();
  return {
    mix: { id, name, recipe: { kind: "parts", parts } },
    problems: [...(name === "" ? [{ code: "missing", path: ["name"] }] : []), ...problems],
  };
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
        <ProblemList form={form} />
        <input type="hidden" name="formId" value={formId} />
        <TextField form={form} name="name" label={say("field.mix-name")} />
        <MixFields form={form} />
        <p class="deed-note">{say("mix.dust")}</p>
        <button type="submit">{say("mix.keep")}</button>
      </form>
    </>
  );
}
