import type { Collection } from "../../../core/plan/collection.ts";
import type { Settings } from "../../../core/plan/settings.ts";
import { dryDays } from "../../../core/plant/care-days.ts";
import type { PlantGroup } from "../../../core/plant/group.ts";
import { capitalised, type Words } from "../../words/words.ts";
import { type FormView, NumberField, ProblemList, SelectField } from "../forms/fields.tsx";
import { AS_KIND, inShownUnit, OWN_CHOICES, OWN_NUMBERS } from "./own-values.ts";
import { PlantFields } from "./pot-form.tsx";
import { ROOT_WORKS } from "./root-works.ts";

interface ChangeFieldsProps {
  readonly form: FormView;
  readonly action: string;
  /** The kind of plant as it was kept. */
  readonly group: PlantGroup;
  readonly settings: Settings;
  readonly ownGroups: Collection["ownGroups"];
}

/** All that may be changed of a pot without an entry in its journal, what the kind has beside each own figure. */
export function ChangeFields({ form, action, group, settings, ownGroups }: ChangeFieldsProps) {
  const { say } = form.words;
  return (
    <form method="post" action={action}>
      <ProblemList form={form} labels={{ name: say("field.pot-name") }} />
      <PlantFields form={form} ownGroups={ownGroups} />
      <DryDays form={form} group={group} settings={settings} />
      <fieldset class="group">
        <legend>{say("own.heading")}</legend>
        <p class="hint">{say("own.hint")}</p>
        <OwnNumbers form={form} group={group} />
        <OwnChoices form={form} group={group} />
      </fieldset>
      <button type="submit">{say("pot.keep-changes")}</button>
    </form>
  );
}

function DryDays({ form, group, settings }: Omit<ChangeFieldsProps, "action" | "ownGroups">) {
  const { say } = form.words;
  const { leafy } = group.values;
  return (
    <fieldset class="group">
      <legend>{say("house.dry-days")}</legend>
      <p class="hint">{say("own.dry-days-hint")}</p>
      <div class="row">
        {ROOT_WORKS.map((work) => (
          <NumberField
            form={form}
            name={`dry.${work}`}
            label={say(`roots.${work}`)}
            hint={say("own.usual-days", { days: dryDays({ roots: work, leafy }, [settings.dryDays]) })}
          />
        ))}
      </div>
    </fieldset>
  );
}

function OwnNumbers({ form, group }: { form: FormView; group: PlantGroup }) {
  const { say } = form.words;
  return (
    <div class="row">
      {OWN_NUMBERS.map(({ name, unit, one = 1 }) => {
        const value = group.values[name];
        const standing = say(`own-standing.${group.evidence[name].status}`);
        const hint =
          typeof value === "number"
            ? say("own.of-kind", { figure: inShownUnit(value, one), unit: spaced(unit), standing })
            : say("own.of-kind-never", { standing });
        return (
          <NumberField
            form={form}
            name={`own.${name}`}
            label={say(`field.own.${name}`)}
            {...(unit === "" ? {} : { unit })}
            hint={hint}
          />
        );
      })}
    </div>
  );
}

function OwnChoices({ form, group }: { form: FormView; group: PlantGroup }) {
  const { say } = form.words;
  return (
    <>
      {(Object.keys(OWN_CHOICES) as (keyof typeof OWN_CHOICES)[]).map((name) => (
        <SelectField
          form={form}
          name={`own.${name}`}
          label={say(`field.own.${name}`)}
          options={[
            {
              value: AS_KIND,
              text: say("own.as-kind", {
                choice: choiceText({ name, value: kindChoice(name, group) }, form.words),
              }),
            },
            ...OWN_CHOICES[name].map((value) => ({
              value,
              text: capitalised(choiceText({ name, value }, form.words), form.words.locale),
            })),
          ]}
        />
      ))}
    </>
  );
}

function spaced(unit: string): string {
  return unit === "" || unit === "%" ? unit : `\u00a0${unit}`;
}

function choiceText({ name, value }: { name: string; value: string }, { trySay }: Words): string {
  return trySay(`own-choice.${name}.${value}`) ?? value;
}

/** What the kind has, as the code of a choice. */
function kindChoice(name: keyof typeof OWN_CHOICES, { values }: PlantGroup): string {
  if (name === "stopsWater") return values.stopWaterNightC === null ? "no" : "yes";
  const value = values[name];
  return value === true ? "yes" : value === false ? "no" : value;
}
