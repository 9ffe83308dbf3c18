import { z } from "zod";
import type { EntryBody, TroubleSign } from "../../../core/journal/entry.ts";
import type { Problem } from "../../../core/problem.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { choice, freeText, maybeNumber, neededNumber, neededText } from "../forms/typed-fields.ts";
import { VESSEL_SHAPE, vesselOfForm } from "../forms/vessel-fields.tsx";
import { ROOT_WORKS } from "./root-works.ts";

export const SIGNS = [
  "wilting",
  "soft-stem",
  "wrinkled",
  "yellow-leaves",
  "dropped-leaves",
  "water-runs-through",
  "pests",
  "scorched",
  "other",
] as const satisfies TroubleSign[];
export const FEELS = ["light", "middling", "heavy"] as const;
export const LEAVES = ["in-leaf", "leafless", "new-growth"] as const;
export const GONE = ["died", "given-away", "other"] as const;

/** Kinds of entry that a pot's page offers, in the order in which growers need them. */
export const LOG_KINDS = [
  "watered",
  "moved",
  "checked",
  "weighed",
  "note",
  "trouble",
  "fed",
  "pruned",
  "treated",
  "leaf",
  "planted",
  "gone",
] as const;

export type LogKind = (typeof LOG_KINDS)[number];

/** Forms that stand on a pot's page: a photo is no entry of a kind of its own, but is offered beside them. */
export const OPEN_KINDS = [...LOG_KINDS, "photo"] as const;

export type OpenKind = (typeof OPEN_KINDS)[number];

export type BodyRead = { ok: true; value: EntryBody } | { ok: false; problems: readonly Problem[] };

const FORMS = {
  watered: z.object({
    waterMl: maybeNumber({ from: 0, to: 1_000_000 }),
    drainedMl: maybeNumber({ from: 0, to: 1_000_000 }),
  }),
  moved: z.object({ toSpotId: neededText(100) }),
  checked: z
    .object({ feel: choice(FEELS).optional(), dryToCm: maybeNumber({ from: 0, to: 200 }) })
    .refine(({ feel, dryToCm }) => feel !== undefined || dryToCm !== undefined, {
      error: "missing",
      path: ["feel"],
    }),
  weighed: z.object({ massKg: neededNumber({ from: 0.01, to: 1000 }) }),
  note: z.object({ text: neededText(2000) }),
  trouble: z.object({ sign: choice(SIGNS), text: freeText() }),
  treated: z.object({ text: freeText() }),
  leaf: z.object({ state: choice(LEAVES) }),
  planted: z.object({ ...VESSEL_SHAPE, mixId: neededText(100), roots: choice(ROOT_WORKS) }),
  gone: z.object({ how: choice(GONE) }),
} as const;

/** What was entered for a pot, as the journal keeps it. */
export function bodyOfLog(kind: LogKind, typed: Typed): BodyRead {
  switch (kind) {
    case "fed":
    case "pruned":
      return { ok: true, value: { kind } };
    case "watered":
      return through(readForm(FORMS.watered, typed), wateredBody);
    case "planted":
      return plantedBody(typed);
    default:
      return through(readForm(FORMS[kind], typed), (value) => ({ kind, ...defined(value) }) as EntryBody);
  }
}

function through<T>(
  read: { ok: true; value: T } | { ok: false; problems: readonly Problem[] },
  make: (value: T) => EntryBody,
): BodyRead {
  return read.ok ? { ok: true, value: make(read.value) } : read;
}

/** No amount means until it ran through; an amount that drained again tells what the pot kept. */
function wateredBody({ waterMl, drainedMl }: z.output<typeof FORMS.watered>): EntryBody {
  if (waterMl === undefined) return { kind: "watered", given: { kind: "ran-through" } };
  if (drainedMl === undefined) return { kind: "watered", given: { kind: "measured", waterMl } };
  return { kind: "watered", given: { kind: "poured-drained", pouredMl: waterMl, drainedMl } };
}

function plantedBody(typed: Typed): BodyRead {
  const read = readForm(FORMS.planted, typed);
  if (!read.ok) return read;
  const { vessel, problems } = vesselOfForm(read.value);
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { kind: "planted", vessel, mixId: read.value.mixId, roots: read.value.roots } };
}

function defined(value: object): object {
  return Object.fromEntries(Object.entries(value).filter(([, held]) => held !== undefined));
}
