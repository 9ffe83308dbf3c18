import type { Problem } from "../../core/problem.ts";
import { type FormView, RadioField, TextField } from "../pages/forms/fields.tsx";
import type { Typed } from "../pages/forms/form-problems.ts";
import type { Words } from "../words/words.ts";
import type { Role } from "./roles.ts";

/** What the last form on the page about access brought about. */
export interface Shown {
  readonly form: "passphrase" | "people" | "tokens";
  readonly typed: Typed;
  readonly problems: readonly Problem[];
  /** A token just made; shown this once. */
  readonly token: string;
  /** A one-time code just made; shown this once. */
  readonly code: string;
  readonly codeFor: string;
}

/** A form of the page: as it was sent where it was this one, else as it begins. */
export function accessForm(
  name: Shown["form"],
  { shown, words, begins = {} }: { shown: Partial<Shown>; words: Words; begins?: Typed },
): FormView {
  const isThis = shown.form === name;
  return {
    typed: isThis ? (shown.typed ?? {}) : begins,
    problems: isThis ? (shown.problems ?? []) : [],
    words,
    prefix: `${name}-`,
  };
}

/** How somebody, or a script, is called, and what they may do. */
export function NameAndRole(props: { form: FormView; label: string; roles: readonly Role[] }) {
  const { form, label, roles } = props;
  const { say } = form.words;
  return (
    <>
      <TextField form={form} name="name" label={label} />
      <RadioField
        form={form}
        name="mayDo"
        label={say("field.mayDo")}
        options={roles.map((value) => ({ value, text: say(`role.${value}`) }))}
      />
    </>
  );
}
