import { type FormView, fieldId, ProblemList, TextField } from "../forms/fields.tsx";
import { fieldProblem } from "../forms/form-problems.ts";

/** A photo with a few words; the phone offers its camera. */
export function PhotoForm({ form, action, formId }: { form: FormView; action: string; formId: string }) {
  const { say } = form.words;
  const id = fieldId({ form, name: "photo" });
  const problem = fieldProblem(form.problems, "photo", form.words);
  return (
    <form method="post" action={action} enctype="multipart/form-data">
      <ProblemList form={form} />
      <input type="hidden" name="formId" value={formId} />
      <div class={problem === undefined ? "field" : "field field-wrong"}>
        <label for={id}>{say("field.photo")}</label>
        <p class="hint" id={`${id}-hint`}>
          {say("hint.photo")}
        </p>
        <input
          type="file"
          id={id}
          name="photo"
          accept="image/jpeg,image/png,image/webp"
          aria-describedby={`${id}-hint`}
          aria-invalid={problem === undefined ? undefined : "true"}
        />
        {problem !== undefined && <p class="problem">{problem}</p>}
      </div>
      <TextField form={form} name="text" label={say("field.text")} />
      <button type="submit">{say("log.keep")}</button>
    </form>
  );
}
