import { randomBytes } from "node:crypto";
import { z } from "zod";
import type { Problem } from "../../../core/problem.ts";
import type { Person, QuietHours } from "../../store/person.ts";
import { choiceOfParts, partsOfChoice } from "../../words/choice-parts.ts";
import type { WordChoice } from "../../words/house-words.ts";
import { type FormView, ProblemList, TextField } from "../forms/fields.tsx";
import { type FormRead, readForm, type Typed } from "../forms/form-problems.ts";
import { neededText } from "../forms/typed-fields.ts";
import { WordChoiceFields, WordsForm } from "../house/words-routes.tsx";

const clock = z
  .string()
  .trim()
  .regex(/^(([01]\d|2[0-3]):[0-5]\d)?$/, "not-a-clock-time")
  .default("");

const PersonForm = WordsForm.extend({ name: neededText(80), quietFrom: clock, quietTo: clock });

/** The person as typed, laid over who it was. */
export function personOfForm(typed: Typed, before: Person): FormRead<Person> {
  const read = readForm(PersonForm, typed);
  if (!read.ok) return read;
  const { name, quietFrom, quietTo, ...parts } = read.value;
  if ((quietFrom === "") !== (quietTo === ""))
    return { ok: false, problems: [oneMissing(quietFrom === "" ? "quietFrom" : "quietTo")] };
  const quiet = quietFrom === "" ? null : { fromHour: hourOf(quietFrom), toHour: hourOf(quietTo) };
  return { ok: true, value: { id: before.id, name, ...choiceOfParts(parts, before), quiet } };
}

/** Somebody new, who is spoken to as the house is. */
export function newPerson({ locale, units }: WordChoice): Person {
  return { id: randomBytes(6).toString("hex"), name: "", locale, units, quiet: null };
}

export function typedOfPerson(person: Person): Typed {
  const { language, numerals, clock: hours, units } = partsOfChoice(person);
  const { quiet, name } = person;
  return { name, language, numerals, clock: hours, units, ...typedOfQuiet(quiet) };
}

function typedOfQuiet(quiet: QuietHours | null): Typed {
  return quiet === null ? {} : { quietFrom: clockOf(quiet.fromHour), quietTo: clockOf(quiet.toHour) };
}

const oneMissing = (field: string): Problem => ({ code: "missing", path: [field] });

function hourOf(text: string): number {
  const [hour = 0, minute = 0] = text.split(":").map(Number);
  return hour + minute / 60;
}

function clockOf(hours: number): string {
  const minutes = Math.round(hours * 60);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${two(Math.floor(minutes / 60) % 24)}:${two(minutes % 60)}`;
}

/** Who it is, how one is spoken to, and when not. */
export function PersonFields({ form, action }: { form: FormView; action: string }) {
  const { say } = form.words;
  return (
    <form method="post" action={action}>
      <ProblemList form={form} labels={{ name: say("field.person-name") }} />
      <TextField form={form} name="name" label={say("field.person-name")} />
      <WordChoiceFields form={form} />
      <fieldset class="group">
        <legend>{say("people.quiet")}</legend>
        <p class="hint">{say("people.quiet-hint")}</p>
        <div class="row">
          <TextField form={form} name="quietFrom" type="time" label={say("field.quietFrom")} />
          <TextField form={form} name="quietTo" type="time" label={say("field.quietTo")} />
        </div>
      </fieldset>
      <button type="submit">{say("people.keep")}</button>
    </form>
  );
}
