import { type Component, type Ranged, TOLD_FIGURES } from "../../../core/mix/component.ts";
import { relativesOf } from "../../../core/mix/relatives.ts";
import type { Words } from "../../words/words.ts";
import { nameAmid } from "../forms/component-name.ts";
import {
  type FormView,
  NumberField,
  ProblemList,
  RadioField,
  SelectField,
  TextField,
} from "../forms/fields.tsx";
import { CAUTIONS, FIGURE_FIELDS, GRAINS, NUTRIENTS, PREPARATIONS, ROLES } from "./component-form.ts";

interface ComponentPageProps {
  /** The kept component; null for a new one. */
  readonly component: Component | null;
  readonly form: FormView;
  readonly formId: string;
}

/** A component of the grower's own: what is known is typed, the rest is bracketed and said to be. */
export function ComponentPage({ component, form, formId }: ComponentPageProps) {
  const { words } = form;
  const { say } = words;
  return (
    <>
      <h1>{component?.name ?? component?.id ?? say("own.title")}</h1>
      <p class="lead">{say("own.lead")}</p>
      {component && <Reckoned component={component} words={words} />}
      <form method="post" action={`/components/${component ? encodeURIComponent(component.id) : "new"}`}>
        <ProblemList form={form} />
        <input type="hidden" name="formId" value={formId} />
        <TextField form={form} name="name" label={say("field.name")} hint={say("own.name-hint")} />
        <Kind form={form} />
        <Figures form={form} />
        <Handling form={form} />
        <p class="deed-note">{say("mix.dust")}</p>
        <button type="submit">{say("own.keep")}</button>
      </form>
    </>
  );
}

function Kind({ form }: { form: FormView }) {
  const { say } = form.words;
  return (
    <>
      <RadioField
        form={form}
        name="role"
        label={say("field.role")}
        options={ROLES.map((value) => ({ value, text: say(`own.${value}`) }))}
      />
      <RadioField
        form={form}
        name="grain"
        label={say("field.grain")}
        options={GRAINS.map((value) => ({ value, text: say(`own.${value}`) }))}
      />
      <NumberField
        form={form}
        name="grainMm"
        label={say("field.grainMm")}
        unit="mm"
        hint={say("hint.grainMm")}
      />
      <RadioField
        form={form}
        name="compost"
        label={say("field.compost")}
        options={(["yes", "no"] as const).map((value) => ({ value, text: say(`own.${value}`) }))}
      />
    </>
  );
}

function Figures({ form }: { form: FormView }) {
  const { say } = form.words;
  return (
    <fieldset class="group">
      <legend>{say("own.figures")}</legend>
      <p class="hint">{say("own.figures-hint")}</p>
      <NumberField
        form={form}
        name="litreKg"
        label={say("field.litreKg")}
        unit="kg"
        hint={say("hint.litreKg")}
      />
      <NumberField
        form={form}
        name="cupPercent"
        label={say("field.cupPercent")}
        unit="%"
        hint={say("hint.cupPercent")}
      />
      <NumberField
        form={form}
        name="poresPercent"
        label={say("field.poresPercent")}
        unit="%"
        hint={say("hint.poresPercent")}
      />
      <p class="sub">{say("own.laboratory")}</p>
      <div class="row">
        {(["water10Percent", "water50Percent", "water100Percent"] as const).map((name) => (
          <NumberField form={form} name={name} label={say(`field.${name}`)} unit="%" />
        ))}
      </div>
    </fieldset>
  );
}

function Handling({ form }: { form: FormView }) {
  const { say } = form.words;
  return (
    <fieldset class="group">
      <legend>{say("own.handling")}</legend>
      <p class="sub">{say("own.prepare")}</p>
      <div class="choices">
        {PREPARATIONS.map((code) => (
          <label class="choice">
            <input
              type="checkbox"
              name={`prepare.${code}`}
              value="yes"
              checked={form.typed[`prepare.${code}`] === "yes"}
            />
            <span>{say(`own.prepare.${code}`)}</span>
          </label>
        ))}
      </div>
      <SelectField
        form={form}
        name="nutrients"
        label={say("field.nutrients")}
        options={NUTRIENTS.map((value) => ({ value, text: say(`own.nutrients.${value}`) }))}
      />
      <SelectField
        form={form}
        name="caution"
        label={say("field.caution")}
        options={CAUTIONS.map((value) => ({ value, text: say(`own.caution.${value}`) }))}
      />
    </fieldset>
  );
}

/** What is reckoned with, and of each figure whether it was told or bracketed. */
function Reckoned({ component, words }: { component: Component; words: Words }) {
  const { say } = words;
  const told = new Set<string>(component.told ?? TOLD_FIGURES);
  const kin = words.list(relativesOf(component).ids.map((id) => nameAmid(id, { words })));
  const rows = TOLD_FIGURES.flatMap((figure) => {
    const range = component[figure];
    return range ? [{ figure, range }] : [];
  });
  return (
    <section>
      <table class="figures">
        <tbody>
          {rows.map(({ figure, range }) => (
            <tr>
              <th scope="row">{say(`field.${FIGURE_FIELDS[figure]}`)}</th>
              <td class="figure">{midText(figure, range, words)}</td>
              <td>
                {rangeText(figure, range, words)} {say(told.has(figure) ? "own.told" : "own.bracketed")}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{say("own.kin", { kin })}</p>
      <p>
        <a class="button quiet" href={`/mixes/new?part.${component.id}=1`}>
          {say("own.use")}
        </a>
      </p>
    </section>
  );
}

function midText(figure: string, { mid }: Ranged, { say }: Words): string {
  return figure.endsWith("Frac")
    ? say("figure.share", { partFrac: mid })
    : say("own.density", { midKgPerL: mid });
}

function rangeText(figure: string, { low, high }: Ranged, { say }: Words): string {
  return figure.endsWith("Frac")
    ? say("own.share-range", { lowFrac: low, highFrac: high })
    : say("own.density-range", { lowKgPerL: low, highKgPerL: high });
}
