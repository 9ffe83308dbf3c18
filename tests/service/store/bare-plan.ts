import type { Deed } from "../../../core/plan/deed.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import { instantOf } from "../../../core/site/instant.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import type { Spread } from "../../../core/weather/spread.ts";

const NONE: Spread = { low: 0, mid: 0, high: 0 };

/** A plan of the right shape in which nothing was reckoned. */
export function barePlan(
  over: { siteId?: string; zone?: string; nowUtcMs?: number; deeds?: readonly BareDeed[] } = {},
): Plan {
  const {
    siteId = "yard",
    zone = "Europe/Berlin",
    nowUtcMs = Date.parse("2031-05-02T04:00Z"),
    deeds = [],
  } = over;
  const issuedAt = instantOf(nowUtcMs);
  return {
    version: 1,
    siteId,
    zone,
    issuedAt,
    forDay: calendarDay(nowUtcMs, zone),
    horizon: { from: issuedAt, to: instantOf(nowUtcMs + 7 * 86_400_000) },
    weatherAge: {
      source: "primary",
      credit: "Invented for a test",
      fetchedAt: issuedAt,
      ageHours: 0,
      memberCount: 0,
      standIns: [],
      trust: "full",
      knownHours: 168,
    },
    pots: deeds.map(barePotPlan),
    spots: [],
    days: [],
    workWindows: [],
    cautions: [],
    changesSince: [],
  };
}

export interface BareDeed extends Partial<Deed> {
  readonly potId: string;
}

function barePotPlan({ potId, ...over }: BareDeed): PotPlan {
  return {
    potId,
    count: 1,
    spotId: "steps",
    action: "none",
    reason: { code: "has-enough", numbers: {} },
    harmAvoided: 0,
    confidence: { word: "likely", shareFrac: 0.7 },
    ...over,
    // biome-ignore lint/suspicious/noThenProperty: the plan's own word for further deeds
    then: [],
    outlook: {
      nowFrac: NONE,
      byDayFrac: [],
      refillFrac: 0.3,
      capacityMl: 1000,
      reachesRefillShareFrac: [],
      wetBaseHours: NONE,
      coldestC: NONE,
      daysToRefill: null,
      massKg: 5,
      restingShareFrac: 0,
      dryUntil: null,
    },
  };
}
