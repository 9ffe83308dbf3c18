import type { CalendarDay } from "../../../core/site/site.ts";
import type { Handover } from "../../store/handover.ts";
import type { Person } from "../../store/person.ts";
import type { Words } from "../../words/words.ts";
import { type FormView, ProblemList, SelectField, TextField } from "../forms/fields.tsx";

export interface HandoverProps {
  readonly form: FormView;
  /** Those that are not over. */
  readonly handovers: readonly Handover[];
  readonly people: readonly Person[];
  /** People to whom a way leads. */
  readonly reached: ReadonlySet<string>;
}

/** Who gets the brief while the grower is away; not printed with the sheet. */
export function HandoverPart({ form, handovers, people, reached }: HandoverProps) {
  const { say } = form.words;
  return (
    <section class="not-printed">
      <h2>{say("handover.title")}</h2>
      <p>{say("handover.text")}</p>
      <ul class="plain">
        {handovers.map((handover) => (
          <Line handover={handover} people={people} reached={reached} words={form.words} />
        ))}
      </ul>
      {people.length === 0 ? (
        <p>
          {say("handover.nobody")} <a href="/people">{say("handover.people")}</a>
        </p>
      ) : (
        <NewHandover form={form} people={people} />
      )}
    </section>
  );
}

interface LineProps extends Pick<HandoverProps, "people" | "reached"> {
  readonly handover: Handover;
  readonly words: Words;
}

function Line({ handover, people, reached, words: { say } }: LineProps) {
  const { id, personId, fromDay, toDay, alone } = handover;
  const name = people.find((person) => person.id === personId)?.name ?? personId;
  const line = say(alone ? "handover.line-alone" : "handover.line", {
    name,
    fromDay: fromDay as CalendarDay,
    toDay: toDay as CalendarDay,
  });
  return (
    <li>
      <p>{line}</p>
      {!reached.has(personId) && <p class="problem">{say("handover.unreached", { name })}</p>}
      <form method="post" action={`/holiday/handover/${id}/end`}>
        <button type="submit" class="quiet" aria-label={say("handover.end-label", { line })}>
          {say("handover.end")}
        </button>
      </form>
    </li>
  );
}

function NewHandover({ form, people }: Pick<HandoverProps, "form" | "people">) {
  const { say } = form.words;
  return (
    <form method="post" action="/holiday/handover">
      <ProblemList form={form} />
      <SelectField
        form={form}
        name="handover-person"
        label={say("field.handover-person")}
        options={people.map(({ id, name }) => ({ value: id, text: name }))}
      />
      <div class="row">
        <TextField form={form} name="fromDay" type="date" label={say("field.fromDay")} />
        <TextField form={form} name="toDay" type="date" label={say("field.toDay")} />
      </div>
      <label class="choice">
        <input type="checkbox" name="alone" value="yes" checked={form.typed.alone === "yes"} />
        <span>{say("handover.alone")}</span>
      </label>
      <button type="submit">{say("handover.keep")}</button>
    </form>
  );
}
