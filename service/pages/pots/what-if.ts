import { settleEntries } from "../../../core/journal/settle-entries.ts";
import { refillContentMl } from "../../../core/plan/harm/refill-point.ts";
import { planContext } from "../../../core/plan/make-context.ts";
import type { PlanInput } from "../../../core/plan/make-plan.ts";
import { spreadOf } from "../../../core/plan/rows/spread-of.ts";
import { type PotNow, potsNow } from "../../../core/pot/pot-now.ts";
import { rollOut } from "../../../core/pot/roll-out.ts";
import type { Pour, Trajectory } from "../../../core/pot/trajectory.ts";
import { forcingAtSpot } from "../../../core/site/forcing-at-spot.ts";
import type { Spot } from "../../../core/site/spot.ts";
import type { Spread } from "../../../core/weather/spread.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { planInputNow } from "../../jobs/plan-basis.ts";
import type { PageContext } from "../page-context.ts";

export type WhatIfKind = "left" | "watered" | "elsewhere";

/** One way the coming days could go for a pot, from the same cloud and weather as the plan. */
export interface WhatIfCourse {
  readonly kind: WhatIfKind;
  readonly spotName: string;
  /** Content by step, as shares of what the drained pot holds. */
  readonly contentFrac: readonly Spread[];
  /** Days until the middle of the cloud comes down to the refill point; null when it does not. */
  readonly refillDays: number | null;
  /** Hours with a waterlogged base, middle of the cloud. */
  readonly wetBaseHours: number;
}

export interface WhatIf {
  readonly startUtcMs: number;
  readonly stepMs: number;
  readonly refillFrac: number;
  readonly capacityMl: number;
  readonly courses: readonly WhatIfCourse[];
}

/** Points are this far apart; chosen by us: a rain shows, and a week has few enough of them. */
const STEP_HOURS = 3;

/** Leave it, water it now, or stand it elsewhere; null without weather or without a planting. */
export async function whatIf(
  { store, now }: PageContext,
  asked: { siteId: string; potId: string; spotId: string | undefined },
): Promise<WhatIf | null> {
  const known = await store.weather.latest(asked.siteId);
  if (!known) return null;
  const { pullId: _, ...weather } = known;
  const input = await planInputNow({ store, siteId: asked.siteId, nowUtcMs: now() }, weather);
  return coursesOf(input, asked);
}

function coursesOf(input: PlanInput, asked: { potId: string; spotId: string | undefined }): WhatIf | null {
  const pots = input.collection.pots.filter(({ id }) => id === asked.potId);
  const journal = settleEntries(input.journal).entries.filter(
    ({ potId }) => potId === undefined || potId === asked.potId,
  );
  const alone = { ...input, collection: { ...input.collection, pots }, journal };
  const { context, past } = planContext(alone);
  const pot = potsNow({ ...alone, past }).pots[0];
  const home = alone.collection.spots.find(({ id }) => id === pot?.spotId);
  if (!pot || !home) return null;
  const { capacityMl } = pot.inVessel.hold;
  const refillFrac = refillContentMl(pot) / capacityMl;
  const roll = (kind: WhatIfKind, spot: Spot, pours: readonly Pour[]): WhatIfCourse => {
    const forcing = forcingAtSpot(context.ready.ahead, context.site, spot);
    const hourCount = context.hourCount;
    const rolled = rollOut({ now: pot, stretches: [{ fromHour: 0, forcing }], pours, hourCount });
    return courseOf({ kind, spot, pot, rolled, refillFrac });
  };
  const other = otherSpot(alone.collection.spots, { home, spotId: asked.spotId });
  return {
    startUtcMs: context.startUtcMs,
    stepMs: STEP_HOURS * HOUR_MS,
    refillFrac,
    capacityMl,
    courses: [
      roll("left", home, []),
      roll("watered", home, [{ hour: 0, waterMl: Number.POSITIVE_INFINITY }]),
      ...(other ? [roll("elsewhere", other, [])] : []),
    ],
  };
}

/** The spot that was asked for; else the first under a roof for a pot in the open, or in the open for one under a roof. */
function otherSpot(spots: readonly Spot[], of: { home: Spot; spotId: string | undefined }): Spot | undefined {
  const others = spots.filter(({ id }) => id !== of.home.id).sort((a, b) => a.walkOrder - b.walkOrder);
  const isDry = ({ kind }: Spot) => kind === "roofed" || kind === "indoors";
  return (
    others.find(({ id }) => id === of.spotId) ??
    others.find((spot) => isDry(spot) !== isDry(of.home)) ??
    others[0]
  );
}

function courseOf(of: {
  kind: WhatIfKind;
  spot: Spot;
  pot: PotNow;
  rolled: Trajectory;
  refillFrac: number;
}): WhatIfCourse {
  const { pot, rolled, refillFrac } = of;
  const { weightFrac, capacityFactor, size, waterMl } = pot.cloud;
  const { capacityMl } = pot.inVessel.hold;
  const shareOf = (column: ArrayLike<number>, offset: number) =>
    spreadOf(
      { values: capacityFactor.map((factor, i) => column[offset + i]! / (capacityMl * factor)), weightFrac },
      0.001,
    );
  const contentFrac = [shareOf(waterMl, 0)];
  for (let hour = STEP_HOURS - 1; hour < rolled.hourCount; hour += STEP_HOURS) {
    contentFrac.push(shareOf(rolled.waterMl, hour * size));
  }
  // The first point is before anything is poured.
  const from = of.kind === "watered" ? 1 : 0;
  const reached = contentFrac.findIndex(({ mid }, step) => step >= from && mid <= refillFrac);
  const wetBaseHours = Float64Array.from({ length: size }, (_, i) => wetHours(rolled, i));
  return {
    kind: of.kind,
    spotName: of.spot.name,
    contentFrac,
    refillDays: reached < 0 ? null : (reached * STEP_HOURS) / 24,
    wetBaseHours: spreadOf({ values: wetBaseHours, weightFrac }, 1).mid,
  };
}

function wetHours({ wetBase, hourCount, size }: Trajectory, particle: number): number {
  let hours = 0;
  for (let hour = 0; hour < hourCount; hour++) hours += wetBase[hour * size + particle]!;
  return hours;
}
