import { z } from "zod";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import { groupsById } from "../../../core/plant/groups.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import type { Problem } from "../../../core/problem.ts";
import { dayInstant } from "../forms/day-instant.ts";
import {
  type FormView,
  NumberField,
  ProblemList,
  RadioField,
  SelectField,
  TextField,
} from "../forms/fields.tsx";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { choice, formId, neededNumber, neededText } from "../forms/typed-fields.ts";
import { VESSEL_SHAPE, VesselFields, vesselOfForm } from "../forms/vessel-fields.tsx";
import { longAgoUtcMs } from "../journal/planted-long-ago.ts";
import { ROOT_WORKS, rootWorkOptions } from "./root-works.ts";

const PotForm = z.object({
  formId: formId(),
  name: neededText(),
  groupId: neededText(100),
  count: neededNumber({ from: 1, to: 10_000, whole: true }),
  canopyWidthCm: neededNumber({ from: 1, to: 1000 }),
  plantHeightCm: neededNumber({ from: 1, to: 2000 }),
  ...VESSEL_SHAPE,
  mixId: neededText(100),
  spotId: neededText(100),
  planted: choice(["long-ago", "on-day"]),
  plantedDay: z.string().optional(),
  roots: choice(ROOT_WORKS),
  wateredDay: z.string().optional(),
});

interface PotRead {
  readonly pot: Pot;
  readonly entries: readonly JournalEntry[];
}

type Dated = ReturnType<typeof dayInstant>;

/** The pot that was typed and the entries that tell its past, or every problem at once. */
export function potOfForm(
  typed: Typed,
  at: { nowUtcMs: number; collection: Collection },
): { ok: true; value: PotRead } | { ok: false; problems: readonly Problem[] } {
  const read = readForm(PotForm, typed);
  const { nowUtcMs, collection } = at;
  const clock = { nowUtcMs, zone: collection.site.zone };
  const planted = plantedInstant(typed, clock);
  const watered = wateredInstant(typed, clock);
  const others = [...unknownNames(typed, collection), ...orderProblems(typed, { planted, watered })];
  const vessel = read.ok ? vesselOfForm(read.value) : null;
  if (read.ok && vessel?.problems.length === 0 && others.length === 0 && planted.ok && watered.ok) {
    const potId = `pot.${read.value.formId}`;
    const entries = pastOf(read.value, {
      vessel: vessel.vessel,
      stamp: { recordedUtcMs: at.nowUtcMs, potId },
      plantedUtcMs: planted.value,
      wateredUtcMs: watered.value,
    });
    return { ok: true, value: { pot: potOf(read.value, potId), entries } };
  }
  const problems = [read, planted, watered].flatMap((part) => (part.ok ? [] : part.problems));
  return { ok: false, problems: [...problems, ...others, ...(vessel?.problems ?? [])] };
}

/** What is named but not there; what is left empty is told by the fields themselves. */
function unknownNames(typed: Typed, { ownGroups, mixes, spots }: Collection): Problem[] {
  const known = {
    groupId: [...groupsById(ownGroups).keys()],
    mixId: mixes.map(({ id }) => id),
    spotId: spots.map(({ id }) => id),
  };
  return Object.entries(known).flatMap(([field, ids]) => {
    const given = (typed[field] ?? "").trim();
    return given === "" || ids.includes(given) ? [] : [{ code: "not-chosen", path: [field] }];
  });
}

function plantedInstant(typed: Typed, at: { nowUtcMs: number; zone: string }): Dated {
  if (typed.planted !== "on-day") return { ok: true, value: longAgoUtcMs(at.nowUtcMs) };
  return dayInstant({ field: "plantedDay", day: typed.plantedDay, ...at });
}

function wateredInstant(
  typed: Typed,
  at: { nowUtcMs: number; zone: string },
): Dated | { ok: true; value: null } {
  if ((typed.wateredDay ?? "") === "") return { ok: true, value: null };
  return dayInstant({ field: "wateredDay", day: typed.wateredDay, ...at });
}

/** A day of watering before that of planting: one of the two is not as it was. */
function orderProblems(
  { planted: kind }: Typed,
  { planted, watered }: { planted: Dated; watered: Dated | { ok: true; value: null } },
): Problem[] {
  const isTold = kind === "on-day" && planted.ok && watered.ok && watered.value !== null;
  return isTold && watered.value < planted.value
    ? [{ code: "watered-before-planted", path: ["wateredDay"] }]
    : [];
}

function pastOf(
  value: z.output<typeof PotForm>,
  past: {
    vessel: Vessel;
    stamp: { recordedUtcMs: number; potId: string };
    plantedUtcMs: number;
    wateredUtcMs: number | null;
  },
): JournalEntry[] {
  const planted: JournalEntry = {
    id: `planted.${value.formId}`,
    atUtcMs: past.plantedUtcMs,
    ...past.stamp,
    body: { kind: "planted", vessel: past.vessel, mixId: value.mixId, roots: value.roots },
  };
  if (past.wateredUtcMs === null) return [planted];
  const watered: JournalEntry = {
    id: `watered.${value.formId}`,
    atUtcMs: past.wateredUtcMs,
    ...past.stamp,
    body: { kind: "watered", given: { kind: "ran-through" } },
  };
  return [planted, watered];
}

function potOf(value: z.output<typeof PotForm>, id: string): Pot {
  return {
    id,
    name: value.name,
    groupId: value.groupId,
    count: value.count,
    canopyWidthCm: value.canopyWidthCm,
    plantHeightCm: value.plantHeightCm,
    firstSpotId: value.spotId,
  };
}

interface PotFieldsProps {
  readonly form: FormView;
  readonly collection: Collection;
  readonly formId: string;
  readonly action: string;
  /** Today in the site's zone, the latest day that can be entered. */
  readonly today: string;
}

/** A pot: what grows in it, the vessel, the mix, where it stands, and how it got there. */
export function PotFields({ form, collection, formId: id, action, today }: PotFieldsProps) {
  const { say } = form.words;
  const named = (list: readonly { id: string; name: string }[]) =>
    list.map(({ id: value, name }) => ({ value, text: name }));
  return (
    <form method="post" action={action}>
      <ProblemList form={form} labels={{ name: say("field.pot-name") }} />
      <input type="hidden" name="formId" value={id} />
      <PlantFields form={form} ownGroups={collection.ownGroups} />
      <VesselFields form={form} />
      <fieldset class="group">
        <legend>{say("pot.where")}</legend>
        <SelectField form={form} name="mixId" label={say("field.mixId")} options={named(collection.mixes)} />
        <SelectField
          form={form}
          name="spotId"
          label={say("field.spotId")}
          options={named(collection.spots)}
        />
      </fieldset>
      <fieldset class="group">
        <legend>{say("pot.past")}</legend>
        <RadioField
          form={form}
          name="planted"
          label={say("field.planted")}
          options={[
            { value: "long-ago", text: say("planted.long-ago") },
            { value: "on-day", text: say("planted.on-day") },
          ]}
        />
        <TextField form={form} name="plantedDay" type="date" max={today} label={say("field.plantedDay")} />
        <SelectField
          form={form}
          name="roots"
          label={say("field.roots")}
          options={rootWorkOptions(form.words)}
        />
        <TextField
          form={form}
          name="wateredDay"
          type="date"
          max={today}
          label={say("field.wateredDay")}
          hint={say("hint.wateredDay")}
        />
      </fieldset>
      <p class="deed-note">{say("pot.lift")}</p>
      <button type="submit">{say("pot.keep")}</button>
    </form>
  );
}

/** What grows in the pot, how many alike, and how large they are. */
export function PlantFields({ form, ownGroups }: { form: FormView; ownGroups: Collection["ownGroups"] }) {
  const { say } = form.words;
  return (
    <fieldset class="group">
      <legend>{say("pot.plant")}</legend>
      <TextField form={form} name="name" label={say("field.pot-name")} hint={say("hint.pot-name")} />
      <SelectField
        form={form}
        name="groupId"
        label={say("field.groupId")}
        groups={groupOptions(form, ownGroups)}
      />
      <div class="row">
        <NumberField form={form} name="count" label={say("field.count")} />
        <NumberField form={form} name="canopyWidthCm" label={say("field.canopyWidthCm")} unit="cm" />
        <NumberField form={form} name="plantHeightCm" label={say("field.plantHeightCm")} unit="cm" />
      </div>
    </fieldset>
  );
}

/** What a new pot form begins with. */
export const NEW_POT_TYPED: Typed = { count: "1", planted: "long-ago", roots: "undisturbed", shape: "round" };

function groupOptions({ words }: FormView, ownGroups: Collection["ownGroups"]) {
  const groups = [...groupsById(ownGroups).values()];
  const sorts = [
    { name: words.say("groups.leafy"), leafy: true },
    { name: words.say("groups.dry"), leafy: false },
  ];
  return sorts.map(({ name, leafy }) => ({
    name,
    options: groups
      .filter((group) => group.values.leafy === leafy)
      .map((group) => ({
        value: group.id,
        text: words.trySay(`group.${group.id}`) ?? group.id,
      })),
  }));
}
