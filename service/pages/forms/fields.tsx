import type { Child } from "hono/jsx";
import type { Problem } from "../../../core/problem.ts";
import type { Words } from "../../words/words.ts";
import { fieldProblem, type Typed } from "./form-problems.ts";

/** A form as it stands: what was typed and what is wrong with it. */
export interface FormView {
  readonly typed: Typed;
  readonly problems: readonly Problem[];
  readonly words: Words;
  /** Sets the ids of fields apart where several forms stand on one page. */
  readonly prefix?: string;
}

/** Id of a field within its page. */
export function fieldId({ form, name }: { form: FormView; name: string }): string {
  return `${form.prefix ?? ""}${name}`;
}

export interface FieldProps {
  readonly form: FormView;
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
}

interface InputProps extends FieldProps {
  readonly type?: "text" | "date" | "search" | "time" | "password";
  readonly list?: string;
  readonly autocomplete?: string;
  readonly max?: string;
}

/** A line of text or a day. */
export function TextField({ type = "text", list, autocomplete = "off", max, ...props }: InputProps) {
  return (
    <Field {...props}>
      <input
        id={fieldId(props)}
        name={props.name}
        type={type}
        value={props.form.typed[props.name] ?? ""}
        list={list}
        autocomplete={autocomplete}
        max={max}
        {...describedBy(props)}
      />
    </Field>
  );
}

/** A number with its unit; text, not a number input, so that a decimal comma survives and no wheel changes it. */
export function NumberField({ unit, ...props }: FieldProps & { unit?: string }) {
  return (
    <Field {...props}>
      <span class="with-unit">
        <input
          id={fieldId(props)}
          name={props.name}
          type="text"
          inputmode="decimal"
          size={6}
          value={props.form.typed[props.name] ?? ""}
          autocomplete="off"
          {...describedBy(props)}
        />
        {unit !== undefined && <span class="unit">{props.form.words.trySay(`unit.${unit}`) ?? unit}</span>}
      </span>
    </Field>
  );
}

export interface Option {
  readonly value: string;
  readonly text: string;
}

/** One of a list that is too long to lay out. */
export function SelectField({
  options,
  groups,
  ...props
}: FieldProps & {
  options?: readonly Option[];
  groups?: readonly { name: string; options: readonly Option[] }[];
}) {
  const chosen = props.form.typed[props.name];
  const optionOf = ({ value, text }: Option) => (
    <option value={value} selected={value === chosen}>
      {text}
    </option>
  );
  return (
    <Field {...props}>
      <select id={fieldId(props)} name={props.name} {...describedBy(props)}>
        {!chosen && <option value="">{props.form.words.say("form.choose")}</option>}
        {options?.map(optionOf)}
        {groups?.map((group) => (
          <optgroup label={group.name}>{group.options.map(optionOf)}</optgroup>
        ))}
      </select>
    </Field>
  );
}

/** One of a few, all in sight. */
export function RadioField({ options, ...props }: FieldProps & { options: readonly Option[] }) {
  const problem = fieldProblem(props.form.problems, props.name, props.form.words);
  return (
    <fieldset class={problem === undefined ? "field" : "field field-wrong"} id={fieldId(props)}>
      <legend>{props.label}</legend>
      {props.hint !== undefined && <p class="hint">{props.hint}</p>}
      <div class="choices">
        {options.map(({ value, text }) => (
          <label class="choice">
            <input
              type="radio"
              name={props.name}
              value={value}
              checked={props.form.typed[props.name] === value}
            />
            <span>{text}</span>
          </label>
        ))}
      </div>
      {problem !== undefined && <p class="problem">{problem}</p>}
    </fieldset>
  );
}

function Field({ form, name, label, hint, children }: FieldProps & { children: Child }) {
  const problem = fieldProblem(form.problems, name, form.words);
  return (
    <div class={problem === undefined ? "field" : "field field-wrong"}>
      <label for={fieldId({ form, name })}>{label}</label>
      {hint !== undefined && (
        <p class="hint" id={`${fieldId({ form, name })}-hint`}>
          {hint}
        </p>
      )}
      {children}
      {problem !== undefined && (
        <p class="problem" id={`${fieldId({ form, name })}-problem`}>
          {problem}
        </p>
      )}
    </div>
  );
}

function describedBy({ form, name, hint }: FieldProps) {
  const wrong = form.problems.some((problem) => problem.path[0] === name);
  const ids = [
    hint === undefined ? "" : `${fieldId({ form, name })}-hint`,
    wrong ? `${fieldId({ form, name })}-problem` : "",
  ].filter((id) => id !== "");
  return {
    "aria-invalid": wrong ? ("true" as const) : undefined,
    "aria-describedby": ids.length > 0 ? ids.join(" ") : undefined,
  };
}

interface ProblemListProps {
  readonly form: FormView;
  /** Labels of fields that the form calls otherwise than the catalogue has it under the field's own name. */
  readonly labels?: Readonly<Record<string, string>>;
}

/** How many things are to be mended, with a way to each, above the form. */
export function ProblemList({ form, labels = {} }: ProblemListProps) {
  const fields = [...new Set(form.problems.map((problem) => String(problem.path[0] ?? "")))];
  if (fields.length === 0) return null;
  const { words } = form;
  return (
    <div class="problems" role="alert">
      <p>{words.say("form.problems", { problemCount: fields.length })}</p>
      <ul>
        {fields.map((field) => (
          <li>
            <a href={`#${fieldId({ form, name: field })}`}>{labels[field] ?? fieldLabel(field, words)}</a>:{" "}
            {fieldProblem(form.problems, field, words)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Where the labels of fields stand that there is one of for each component, spot or work. */
const FAMILIES: Readonly<Record<string, string>> = { part: "component", name: "ready-spot", dry: "roots" };

/** A field's label, by its own name or that of its family. */
function fieldLabel(field: string, { trySay }: Words): string {
  const [family = field, code] = field.split(".");
  return (
    trySay(`field.${field}`) ?? trySay(`${FAMILIES[family]}.${code}`) ?? trySay(`field.${family}`) ?? field
  );
}
