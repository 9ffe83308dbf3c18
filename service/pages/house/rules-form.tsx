import { z } from "zod";
import type { Settings } from "../../../core/plan/settings.ts";
import type { Problem } from "../../../core/problem.ts";
import { type FormView, NumberField, type Option, ProblemList, RadioField } from "../forms/fields.tsx";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { maybeNumber, neededNumber } from "../forms/typed-fields.ts";
import { ROOT_WORKS } from "../pots/root-works.ts";

const dryField = (work: (typeof ROOT_WORKS)[number]) => `dry.${work}`;

const RulesForm = z.object({
  dayStartsHour: neededNumber({ from: 0, to: 23 }),
  dayEndsHour: neededNumber({ from: 1, to: 24 }),
  horizonDays: neededNumber({ from: 1, to: 14, whole: true }),
  tripWorth: neededNumber({ from: 0, to: 1000 }),
  tripsBeforeWork: maybeNumber({ from: 0, to: 10_000, whole: true }),
  liftLimitKg: maybeNumber({ from: 0.1, to: 200 }),
  ...Object.fromEntries(ROOT_WORKS.map((work) => [dryField(work), maybeNumber({ from: 0, to: 365 })])),
});

type RulesRead = { ok: true; value: Settings } | { ok: false; problems: readonly Problem[] };

/** The house rules as typed, laid over the settings as they were. */
export function rulesOfForm(typed: Typed, before: Settings): RulesRead {
  const read = readForm(RulesForm, typed);
  if (!read.ok) return read;
  const value = read.value as Record<string, number | undefined>;
  if (value.dayEndsHour! <= value.dayStartsHour!) {
    return { ok: false, problems: [{ code: "ends-before-start", path: ["dayEndsHour"] }] };
  }
  const dry = ROOT_WORKS.flatMap((work) => {
    const days = value[dryField(work)];
    return days === undefined ? [] : [[work, days] as const];
  });
  return {
    ok: true,
    value: {
      seed: before.seed,
      cloudSize: before.cloudSize,
      horizonDays: value.horizonDays!,
      tripWorth: value.tripWorth!,
      dayStartsHour: value.dayStartsHour!,
      dayEndsHour: value.dayEndsHour!,
      ...(dry.length > 0 ? { dryDays: Object.fromEntries(dry) } : {}),
      ...(value.tripsBeforeWork === undefined ? {} : { tripsBeforeWork: value.tripsBeforeWork }),
      ...(value.liftLimitKg === undefined ? {} : { liftLimitKg: value.liftLimitKg }),
    },
  };
}

/** Settings as the text of their fields. */
export function typedOfRules(settings: Settings): Typed {
  const { dryDays = {}, ...plain } = settings;
  return {
    ...Object.fromEntries(Object.entries(plain).map(([name, value]) => [name, String(value)])),
    ...Object.fromEntries(Object.entries(dryDays).map(([work, days]) => [`dry.${work}`, String(days)])),
  };
}

/** Thousandths of a plant that a carry must save, as steps of a plain scale. Chosen by us. */
const TRIP_WORTHS = ["1", "4", "12", "40"] as const;

/** The steps; a figure that was set elsewhere stays as one more. */
function tripScale({ typed, words }: FormView): Option[] {
  const steps = TRIP_WORTHS.map((value) => ({ value, text: words.say(`trip-worth.${value}`) }));
  const own = typed.tripWorth;
  if (own === undefined || own === "" || steps.some(({ value }) => value === own)) return steps;
  return [...steps, { value: own, text: words.say("trip-worth.own", { tripWorth: own }) }];
}

/** How this house wants to be advised. */
export function RulesFields({ form }: { form: FormView }) {
  const { say } = form.words;
  return (
    <form method="post" action="/house/rules">
      <ProblemList form={form} />
      <div class="row">
        <NumberField
          form={form}
          name="dayStartsHour"
          label={say("field.dayStartsHour")}
          hint={say("hint.hours")}
        />
        <NumberField form={form} name="dayEndsHour" label={say("field.dayEndsHour")} />
        <NumberField
          form={form}
          name="horizonDays"
          label={say("field.horizonDays")}
          hint={say("hint.horizonDays")}
        />
      </div>
      <RadioField
        form={form}
        name="tripWorth"
        label={say("field.tripWorth")}
        hint={say("hint.tripWorth")}
        options={tripScale(form)}
      />
      <div class="row">
        <NumberField
          form={form}
          name="tripsBeforeWork"
          label={say("field.tripsBeforeWork")}
          hint={say("hint.tripsBeforeWork")}
        />
        <NumberField
          form={form}
          name="liftLimitKg"
          label={say("field.liftLimitKg")}
          unit="kg"
          hint={say("hint.liftLimitKg")}
        />
      </div>
      <fieldset class="group">
        <legend>{say("house.dry-days")}</legend>
        <p class="hint">{say("house.dry-days-hint")}</p>
        <div class="parts">
          {ROOT_WORKS.map((work) => (
            <NumberField form={form} name={dryField(work)} label={say(`roots.${work}`)} />
          ))}
        </div>
      </fieldset>
      <button type="submit">{say("house.keep-rules")}</button>
    </form>
  );
}
