import type { Collection } from "../../../core/plan/collection.ts";
import type { Deed } from "../../../core/plan/deed.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { PotOutlook, PotPlan } from "../../../core/plan/pot-plan.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { CalendarDay } from "../../../core/site/site.ts";
import type { Spot } from "../../../core/site/spot.ts";
import type { Spread } from "../../../core/weather/spread.ts";

export const day = (text: string): CalendarDay => text as CalendarDay;
export const flat = (mid: number): Spread => ({ low: mid, mid, high: mid });

export const spot = (id: string, over: Partial<Spot> = {}): Spot => ({
  id,
  name: id,
  kind: "open",
  skyFrac: 1,
  sunFrac: 1,
  windFrac: 1,
  rainFrac: 1,
  nightWarmthC: 0,
  walkOrder: 1,
  ...over,
});

export const pot = (id: string, over: Partial<Pot> = {}): Pot => ({
  id,
  name: id,
  groupId: "citrus",
  canopyWidthCm: 40,
  plantHeightCm: 60,
  firstSpotId: "rail",
  ...over,
});

export const outlook: PotOutlook = {
  nowFrac: { low: 0.2, mid: 0.3, high: 0.4 },
  byDayFrac: [flat(0.2), flat(0.1)],
  refillFrac: 0.35,
  capacityMl: 2400,
  reachesRefillShareFrac: [0.9, 1],
  wetBaseHours: flat(0),
  coldestC: { low: 3, mid: 5, high: 7 },
  daysToRefill: flat(0),
  massKg: 9,
  restingShareFrac: 0,
  dryUntil: null,
};

export const deed = (over: Partial<Deed> = {}): Deed => ({
  action: "none",
  reason: { code: "has-enough", numbers: {} },
  harmAvoided: 0,
  confidence: { word: "likely", shareFrac: 0.7 },
  ...over,
});

export const potPlan = (potId: string, over: Partial<PotPlan> = {}): PotPlan => ({
  ...deed(),
  potId,
  count: 1,
  spotId: "rail",
  // biome-ignore lint/suspicious/noThenProperty: the plan's own name for later deeds
  then: [],
  outlook,
  ...over,
});

/** An invented terrace: two spots, four pots, one of each common deed. */
export const collection: Collection = {
  site: { id: "quay", name: "Low Quay", latDeg: 41, lonDeg: 2, elevationM: 9, zone: "Europe/Madrid" },
  spots: [
    spot("rail", { name: "South rail", walkOrder: 2 }),
    spot("shed", { name: "Tool shed", walkOrder: 1, kind: "roofed", rainFrac: 0 }),
  ],
  mixes: [],
  pots: [
    pot("lemon", { name: "Lemon", count: 3 }),
    pot("plumeria", { name: "Plumeria" }),
    pot("aloe", { name: "Aloe", firstSpotId: "shed" }),
    pot("fig", { name: "Fig" }),
  ],
};

export const plan = (over: Partial<Plan> = {}): Plan => ({
  version: 1,
  siteId: "quay",
  zone: "Europe/Madrid",
  issuedAt: "2027-05-12T04:30Z",
  forDay: day("2027-05-12"),
  horizon: { from: "2027-05-12T04:00Z", to: "2027-05-19T04:00Z" },
  weatherAge: {
    source: "primary",
    credit: "Weather by the invented office",
    fetchedAt: "2027-05-12T02:30Z",
    ageHours: 2,
    memberCount: 51,
    standIns: [],
    trust: "full",
    knownHours: 168,
  },
  pots: [
    potPlan("aloe", {
      action: "carry-out",
      spotId: "shed",
      toSpotId: "rail",
      from: "2027-05-14T07:00Z",
      reason: { code: "danger-past", numbers: { coldestC: 8.2 } },
    }),
    potPlan("lemon", {
      action: "water",
      count: 3,
      amountMl: 850,
      by: "2027-05-12T07:00Z",
      reason: { code: "at-refill-point", numbers: { leftFrac: 0.31, refillFrac: 0.35 } },
      confidence: { word: "very-likely", shareFrac: 0.9 },
    }),
    potPlan("plumeria", {
      action: "keep-dry",
      until: day("2027-05-19"),
      reason: { code: "freshly-planted-dry", numbers: { sinceDays: 2, untilDay: "2027-05-19" } },
      // biome-ignore lint/suspicious/noThenProperty: the plan's own name for later deeds
      then: [
        deed({
          action: "carry-in",
          toSpotId: "shed",
          by: "2027-05-12T11:00Z",
          reason: { code: "rain-on-fresh-roots", numbers: { rainMm: 18, untilDay: "2027-05-19" } },
          lift: { massKg: 31, hands: "two-people", limitKg: 10 },
        }),
      ],
    }),
    potPlan("fig"),
  ],
  spots: [],
  days: [
    {
      day: day("2027-05-12"),
      rainMm: { low: 4, mid: 11, high: 24 },
      rainShareFrac: 0.8,
      peakRainMmPerH: 14,
      tempMinC: flat(12),
      tempMaxC: flat(23.4),
      gustMPerS: 15,
      et0Mm: 4,
      thunderHours: ["2027-05-12T13:00Z", "2027-05-12T14:00Z"],
    },
    {
      day: day("2027-05-14"),
      rainMm: flat(0),
      rainShareFrac: 0,
      peakRainMmPerH: 0,
      tempMinC: flat(8),
      tempMaxC: flat(21),
      gustMPerS: 6,
      et0Mm: 4,
      thunderHours: [],
    },
  ],
  workWindows: [
    {
      from: "2027-05-14T06:00Z",
      to: "2027-05-14T10:00Z",
      dryShareFrac: 0.96,
      hottestHeatIndexC: 22,
      dryDaysAfter: 3,
    },
  ],
  cautions: [{ code: "sap", potIds: ["plumeria"], numbers: {} }],
  changesSince: [{ potId: "lemon", was: "none", is: "water", because: "weather" }],
  ...over,
});
