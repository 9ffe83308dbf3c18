import { z } from "zod";
import type { Vessel } from "../../../core/pot/vessel.ts";
import { vesselProblems, vesselQuestions } from "../../../core/pot/vessel-checks.ts";
import type { Problem } from "../../../core/problem.ts";
import type { Words } from "../../words/words.ts";
import { type FormView, NumberField, RadioField, SelectField } from "./fields.tsx";
import { SureBox } from "./sure-box.tsx";
import { choice, maybeNumber, neededNumber } from "./typed-fields.ts";

export const SHAPES = ["round", "square"] as const;
export const MATERIALS = ["plastic", "glazed", "unglazed", "fabric", "metal", "wood"] as const;

const widthCm = () => neededNumber({ from: 2, to: 300 });
const depthCm = () => maybeNumber({ from: 0, to: 50 });

/** Fields of a vessel as typed. */
export const VESSEL_SHAPE = {
  shape: choice(SHAPES),
  material: choice(MATERIALS),
  topCm: widthCm(),
  baseCm: widthCm(),
  heightCm: widthCm(),
  rimGapCm: depthCm(),
  topDressingCm: depthCm(),
  saucerCm: depthCm(),
  vesselSure: z.string().optional(),
};

type VesselTyped = z.output<z.ZodObject<typeof VESSEL_SHAPE>>;

/** The vessel that was typed, and what is impossible or worth asking about; a question once answered is not asked again. */
export function vesselOfForm(typed: VesselTyped): { vessel: Vessel; problems: Problem[] } {
  const { shape, material, topCm, baseCm, heightCm, rimGapCm, topDressingCm, saucerCm, vesselSure } = typed;
  const vessel: Vessel = {
    shape,
    material,
    topCm,
    baseCm,
    heightCm,
    ...(rimGapCm === undefined ? {} : { rimGapCm }),
    ...(topDressingCm === undefined ? {} : { topDressingCm }),
    ...(saucerCm === undefined ? {} : { saucerCm }),
  };
  const wrong = vesselProblems(vessel);
  const asked = wrong.length === 0 && vesselSure !== "yes" ? vesselQuestions(vessel) : [];
  return { vessel, problems: [...wrong, ...asked] };
}

/** A vessel as the text of its fields, for a form that begins with one. */
export function typedOfVessel(vessel: Vessel): Record<string, string> {
  const { emptyMassKg: _, ...shown } = vessel;
  return Object.fromEntries(Object.entries(shown).map(([name, value]) => [name, String(value)]));
}

/** Inner measures of a pot. */
export function VesselFields({ form }: { form: FormView }) {
  const { say } = form.words;
  return (
    <fieldset class="group">
      <legend>{say("vessel.heading")}</legend>
      <p class="hint">{say("vessel.hint")}</p>
      <RadioField
        form={form}
        name="shape"
        label={say("field.shape")}
        options={SHAPES.map((value) => ({ value, text: say(`shape.${value}`) }))}
      />
      <div class="row">
        <NumberField form={form} name="topCm" label={say("field.topCm")} unit="cm" />
        <NumberField form={form} name="baseCm" label={say("field.baseCm")} unit="cm" />
        <NumberField form={form} name="heightCm" label={say("field.heightCm")} unit="cm" />
      </div>
      <SelectField
        form={form}
        name="material"
        label={say("field.material")}
        options={MATERIALS.map((value) => ({ value, text: say(`material.${value}`) }))}
      />
      <div class="row">
        <NumberField form={form} name="saucerCm" label={say("field.saucerCm")} unit="cm" />
        <NumberField form={form} name="rimGapCm" label={say("field.rimGapCm")} unit="cm" />
        <NumberField form={form} name="topDressingCm" label={say("field.topDressingCm")} unit="cm" />
      </div>
      <VesselSure problems={form.problems} words={form.words} />
    </fieldset>
  );
}

const ASKED = new Set(["base-wider-than-rim", "saucer-as-deep-as-pot"]);

/** Confirms measures that are asked about; nothing where none are. */
export function VesselSure({ problems, words }: { problems: readonly Problem[]; words: Words }) {
  return <SureBox problems={problems} asked={ASKED} name="vesselSure" text={words.say("vessel.sure")} />;
}
