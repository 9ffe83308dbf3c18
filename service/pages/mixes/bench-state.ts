import { z } from "zod";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import { componentsById } from "../../../core/mix/library.ts";
import type { Mix, MixPart } from "../../../core/mix/mix.ts";
import { type MixFigures, mixFigures } from "../../../core/mix/mix-figures.ts";
import { type MixInVessel, workedInVessel } from "../../../core/mix/mix-in-vessel.ts";
import { workedMix } from "../../../core/mix/worked-mix.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import type { Problem } from "../../../core/problem.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { partsOfForm } from "../forms/mix-fields.tsx";
import { typedOfVessel, VESSEL_SHAPE, vesselOfForm } from "../forms/vessel-fields.tsx";
import type { SiteNow } from "../site-now.ts";

/** What lies on the mix bench: parts and a vessel, and what they make together. */
export interface BenchState {
  readonly typed: Typed;
  readonly problems: readonly Problem[];
  readonly parts: readonly MixPart[];
  readonly vessel: Vessel | null;
  readonly inVessel: MixInVessel | null;
  /** Of the mix alone; null where `inVessel` is. */
  readonly figures: MixFigures | null;
  readonly isLeafy: boolean;
  readonly isCompact: boolean;
}

const NOTHING = { inVessel: null, figures: null } as const;

const BenchVessel = z.object(VESSEL_SHAPE);

/** Reads the bench from its fields; nothing typed yet is no problem, only an empty bench. */
export function benchState(typed: Typed, { now, mix }: { now: SiteNow; mix: Mix | null }): BenchState {
  const filled: Typed = { ...typedOfVessel(usualVessel(now.journal)), for: "leafy", ...typed };
  const isEmpty = !Object.keys(typed).some((name) => name.startsWith("part."));
  const { parts, problems } = isEmpty ? { parts: [], problems: [] } : partsOfForm(typed);
  const read = readForm(BenchVessel, filled);
  const vessel = read.ok ? vesselOfForm(read.value) : { vessel: null, problems: read.problems };
  const wrongVessel = vessel.problems.length > 0;
  return {
    typed: filled,
    problems: [...problems, ...vessel.problems],
    parts,
    vessel: wrongVessel ? null : vessel.vessel,
    ...(vessel.vessel && !wrongVessel && parts.length > 0
      ? held({ now, mix, parts, vessel: vessel.vessel })
      : NOTHING),
    isLeafy: filled.for !== "dry",
    isCompact: filled.compact === "yes",
  };
}

/** The grower's own test counts as long as the parts are those that were tested. */
function held(input: {
  now: SiteNow;
  mix: Mix | null;
  parts: readonly MixPart[];
  vessel: Vessel;
}): Pick<BenchState, "inVessel" | "figures"> {
  const { now, mix, parts, vessel } = input;
  const sameParts =
    mix?.recipe.kind === "parts" && JSON.stringify(mix.recipe.parts) === JSON.stringify(parts);
  const test = sameParts ? mix.test : undefined;
  const worked = workedMix(
    { id: "bench", name: "", recipe: { kind: "parts", parts }, ...(test ? { test } : {}) },
    componentsById(now.collection.ownComponents),
  );
  if (!worked.ok) return NOTHING;
  return { inVessel: workedInVessel(worked.value, vessel), figures: mixFigures(worked.value) };
}

/** A common pot, where no pot has been planted yet. Chosen by us. */
const COMMON_VESSEL: Vessel = {
  shape: "round",
  topCm: 20,
  baseCm: 15,
  heightCm: 18,
  material: "plastic",
  rimGapCm: 1,
};

/** The vessel planted last: a grower thinks of the next pot as of the one at hand. */
function usualVessel(journal: readonly JournalEntry[]): Vessel {
  const last = journal.findLast(({ body }) => body.kind === "planted");
  return last?.body.kind === "planted" ? last.body.vessel : COMMON_VESSEL;
}
