import { z } from "zod";
import type { Problem } from "../../../core/problem.ts";
import type { Spot } from "../../../core/site/spot.ts";
import { type FormView, NumberField, ProblemList, RadioField, TextField } from "../forms/fields.tsx";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { choice, maybeNumber, neededNumber, neededText } from "../forms/typed-fields.ts";

const KINDS = ["open", "roof-edge", "roofed", "indoors"] as const;
const CARRIES = ["few-steps", "same-level", "stairs"] as const;

const percent = () => neededNumber({ from: 0, to: 100 });

const SpotForm = z.object({
  name: neededText(),
  kind: choice(KINDS),
  sunPercent: percent(),
  skyPercent: percent(),
  windPercent: percent(),
  rainPercent: percent(),
  edgeHeightM: maybeNumber({ from: 0, to: 100 }),
  edgeBehindM: maybeNumber({ from: -100, to: 100 }),
  nightWarmthC: neededNumber({ from: -10, to: 30 }),
  heatedToC: maybeNumber({ from: -10, to: 40 }),
  places: maybeNumber({ from: 0, to: 10_000, whole: true }),
  walkOrder: neededNumber({ from: 0, to: 1000 }),
  carry: choice(CARRIES),
});

/** A spot as typed; what the form does not show is kept from the spot as it was. */
export function spotOfForm(
  typed: Typed,
  { id, before }: { id: string; before: Spot | null },
): { ok: true; value: Spot } | { ok: false; problems: readonly Problem[] } {
  const read = readForm(SpotForm, typed);
  if (!read.ok) return read;
  const { value } = read;
  const edgeMissing =
    value.kind === "roof-edge" && (value.edgeHeightM === undefined || value.edgeBehindM === undefined);
  if (edgeMissing) {
    const path = [value.edgeHeightM === undefined ? "edgeHeightM" : "edgeBehindM"];
    return { ok: false, problems: [{ code: "missing", path }] };
  }
  return { ok: true, value: spotOf(value, { id, before }) };
}

function spotOf(value: z.output<typeof SpotForm>, { id, before }: { id: string; before: Spot | null }): Spot {
  const { edgeHeightM, edgeBehindM, heatedToC, places } = value;
  const hasEdge = value.kind === "roof-edge" && edgeHeightM !== undefined && edgeBehindM !== undefined;
  const { places: _, ...otherRoom } = before?.room ?? {};
  const room = { ...otherRoom, ...(places === undefined ? {} : { places }) };
  return {
    id,
    name: value.name,
    kind: value.kind,
    skyFrac: value.skyPercent / 100,
    sunFrac: value.sunPercent / 100,
    windFrac: value.windPercent / 100,
    rainFrac: value.rainPercent / 100,
    nightWarmthC: value.nightWarmthC,
    walkOrder: value.walkOrder,
    carry: value.carry,
    ...(before?.shade ? { shade: before.shade } : {}),
    ...(hasEdge ? { roofEdge: { heightM: edgeHeightM, behindM: edgeBehindM } } : {}),
    ...(value.kind === "indoors" && heatedToC !== undefined ? { heatedToC } : {}),
    ...(Object.keys(room).length > 0 ? { room } : {}),
  };
}

/** A spot as the text of its fields. */
export function typedOfSpot(spot: Spot): Typed {
  const text = (value: number | undefined) => (value === undefined ? "" : String(value));
  const percentText = (frac: number) => String(Math.round(frac * 100));
  return {
    name: spot.name,
    kind: spot.kind,
    sunPercent: percentText(spot.sunFrac),
    skyPercent: percentText(spot.skyFrac),
    windPercent: percentText(spot.windFrac),
    rainPercent: percentText(spot.rainFrac),
    edgeHeightM: text(spot.roofEdge?.heightM),
    edgeBehindM: text(spot.roofEdge?.behindM),
    nightWarmthC: text(spot.nightWarmthC),
    heatedToC: text(spot.heatedToC),
    places: text(spot.room?.places),
    walkOrder: text(spot.walkOrder),
    carry: spot.carry ?? "same-level",
  };
}

/** What a spot lets through and what it takes in. */
export function SpotFields({ form, formId, action }: { form: FormView; formId: string; action: string }) {
  const { say } = form.words;
  return (
    <form method="post" action={action}>
      <ProblemList form={form} labels={{ name: say("field.spot-name") }} />
      <input type="hidden" name="formId" value={formId} />
      <TextField form={form} name="name" label={say("field.spot-name")} />
      <RadioField
        form={form}
        name="kind"
        label={say("field.kind")}
        options={KINDS.map((value) => ({ value, text: say(`spot-kind.${value}`) }))}
      />
      <fieldset class="group">
        <legend>{say("spot.lets-through")}</legend>
        <p class="hint">{say("spot.lets-through-hint")}</p>
        <div class="row">
          <NumberField form={form} name="sunPercent" label={say("field.sunPercent")} unit="%" />
          <NumberField form={form} name="skyPercent" label={say("field.skyPercent")} unit="%" />
          <NumberField form={form} name="windPercent" label={say("field.windPercent")} unit="%" />
          <NumberField form={form} name="rainPercent" label={say("field.rainPercent")} unit="%" />
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>{say("spot.edge")}</legend>
        <p class="hint">{say("spot.edge-hint")}</p>
        <div class="row">
          <NumberField form={form} name="edgeHeightM" label={say("field.edgeHeightM")} unit="m" />
          <NumberField form={form} name="edgeBehindM" label={say("field.edgeBehindM")} unit="m" />
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>{say("spot.nights")}</legend>
        <div class="row">
          <NumberField form={form} name="nightWarmthC" label={say("field.nightWarmthC")} unit="°C" />
          <NumberField form={form} name="heatedToC" label={say("field.heatedToC")} unit="°C" />
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>{say("spot.room")}</legend>
        <div class="row">
          <NumberField form={form} name="places" label={say("field.places")} hint={say("hint.places")} />
          <NumberField
            form={form}
            name="walkOrder"
            label={say("field.walkOrder")}
            hint={say("hint.walkOrder")}
          />
        </div>
        <RadioField
          form={form}
          name="carry"
          label={say("field.carry")}
          options={CARRIES.map((value) => ({ value, text: say(`carry.${value}`) }))}
        />
      </fieldset>
      <button type="submit">{say("spot.keep")}</button>
    </form>
  );
}
