import type { Collection } from "../../../../core/plan/collection.ts";
import type { Deed, ReasonCode } from "../../../../core/plan/deed.ts";
import type { Caution, DayOutline, Plan } from "../../../../core/plan/plan.ts";
import type { PotPlan } from "../../../../core/plan/pot-plan.ts";
import type { BriefTiming } from "../../../../service/brief/brief-value.ts";
import { collection, day, deed, flat, outlook, plan, pot, potPlan, spot } from "../../brief/plan-builder.ts";

export interface Morning {
  readonly name: string;
  readonly plan: Plan;
  readonly collection: Collection;
  readonly timing?: BriefTiming;
}

const NINE = "2027-05-12T07:00Z";
const ONE_PM = "2027-05-12T11:00Z";
const HURT = { coldestC: 2, limitC: 8 };
const PASSED_BY = { rainMm: 12, reachesMm: 1, refillFrac: 0.4 };
const FRIDAY = day("2027-05-14");

/** An invented quay: names are the grower's own and stay as they are in every language. */
const quay: Collection = {
  ...collection,
  spots: [...collection.spots, spot("bench", { name: "North bench", walkOrder: 3 })],
  pots: [
    ...collection.pots,
    ...["Jade", "Agave", "Olive", "Hibiscus", "Euphorbia"].map((name) => pot(name.toLowerCase(), { name })),
  ],
};

const mild: DayOutline = {
  day: day("2027-05-12"),
  rainMm: flat(0),
  rainShareFrac: 0.02,
  peakRainMmPerH: 0,
  tempMinC: flat(12),
  tempMaxC: flat(23.4),
  gustMPerS: 6,
  et0Mm: 4,
  thunderHours: [],
};

const NOTHING: Partial<Plan> = {
  pots: [potPlan("fig")],
  days: [mild],
  workWindows: [],
  cautions: [],
  changesSince: [],
};

function morning(name: string, over: Partial<Plan>, more: Partial<Morning> = {}): Morning {
  return { name, plan: plan({ ...NOTHING, ...over }), collection: quay, ...more };
}

const because = (code: ReasonCode, numbers: Record<string, number | string> = {}) => ({ code, numbers });

function does(
  potId: string,
  action: Deed["action"],
  reason: Deed["reason"],
  over: Partial<PotPlan> = {},
): PotPlan {
  return potPlan(potId, { action, reason, confidence: { word: "very-likely", shareFrac: 0.9 }, ...over });
}

const water = (potId: string, amountMl: number, over: Partial<PotPlan> = {}) =>
  does(potId, "water", because("at-refill-point", { leftFrac: 0.31, refillFrac: 0.35 }), {
    amountMl,
    by: NINE,
    ...over,
  });

const carryIn = (potId: string, reason: Deed["reason"], over: Partial<PotPlan> = {}) =>
  does(potId, "carry-in", reason, { toSpotId: "shed", by: ONE_PM, ...over });

const caution = (code: Caution["code"], over: Partial<Caution> = {}): Caution => ({
  code,
  potIds: [],
  numbers: {},
  ...over,
});

const age = (over: Partial<Plan["weatherAge"]>): Partial<Plan> => ({
  weatherAge: { ...plan().weatherAge, ...over },
});

const timed = (over: Partial<BriefTiming>): BriefTiming => ({
  lateUtcMs: null,
  dueUtcMs: Date.parse("2027-05-12T03:30Z"),
  missedDays: [],
  ...over,
});

const many = (count: number, of: (index: number) => PotPlan): Partial<Plan> => ({
  pots: [...Array(count).keys()].map(of),
});

const bench = (count: number): Collection => ({
  ...quay,
  pots: [...Array(count).keys()].map((index) => pot(`p${index}`, { name: `Pot ${index + 1}` })),
});

const wet: Partial<DayOutline> = { rainMm: { low: 4, mid: 11, high: 24 }, rainShareFrac: 0.8, gustMPerS: 15 };

/** Forty mornings that a grower may wake up to; figures are plausible and invented. */
export const MORNINGS: readonly Morning[] = [
  morning("quiet", {}),
  morning("quiet, with a pot kept dry", {
    pots: [potPlan("fig"), does("plumeria", "keep-dry", because("resting"), { until: FRIDAY })],
  }),
  morning("first day, no pots yet", { pots: [] }, { collection: { ...quay, pots: [] } }),
  morning("one pot to water", { pots: [water("fig", 850)] }),
  morning("one entry of three pots", { pots: [water("lemon", 850, { count: 3, untilItRunsThrough: true })] }),
  morning("water runs through, amount unknown", {
    pots: [does("fig", "water", because("first-drink-due", { sinceDays: 14 }), { untilItRunsThrough: true })],
  }),
  morning("water ahead of the next round", {
    pots: [
      does("fig", "water", because("at-refill-point", { leftFrac: 0.4, refillFrac: 0.35 }), {
        amountMl: 400,
        by: NINE,
      }),
    ],
  }),
  morning("reaches the refill point today", {
    pots: [
      does(
        "fig",
        "water",
        because("refill-point-today", { leftFrac: 0.4, refillFrac: 0.35, reachedAt: ONE_PM }),
        {
          amountMl: 400,
        },
      ),
    ],
  }),
  morning("only in part before cold", {
    pots: [
      does("fig", "water", because("part-before-cold", { nightC: 4, limitC: 8, limit: "stop" }), {
        amountMl: 250,
      }),
    ],
  }),
  morning("rain will do", {
    pots: [does("fig", "none", because("rain-will-do", { rainMm: 12 }))],
    days: [{ ...mild, ...wet }],
  }),
  morning("light, and air for roots", {
    pots: [
      carryIn("jade", because("too-dim", { lightFrac: 0.12 })),
      does("fig", "water", because("part-for-air", { leftFrac: 0.1, refillFrac: 0.4 }), { amountMl: 300 }),
    ],
  }),
  morning("found wetter than reckoned", {
    pots: [
      does("fig", "none", because("found-wetter", { foundDay: "2027-05-11" })),
      does("lemon", "clear-hole", because("stays-wet")),
    ],
  }),
  morning("rain does not reach", {
    pots: [
      does("fig", "water", because("rain-does-not-reach", { ...PASSED_BY, leftFrac: 0.3 }), {
        amountMl: 600,
      }),
      does("lemon", "water", because("rain-does-not-reach", { ...PASSED_BY, leftFrac: 0.5 }), {
        amountMl: 800,
      }),
    ],
  }),
  morning("freshly planted", {
    pots: [
      does("plumeria", "keep-dry", because("freshly-planted-dry", { sinceDays: 0, untilDay: "2027-05-19" }), {
        until: day("2027-05-19"),
      }),
      does("lemon", "water", because("leafy-watered-in"), { amountMl: 900, count: 3 }),
    ],
  }),
  morning("first day after planting, rain coming", {
    pots: [carryIn("plumeria", because("rain-on-fresh-roots", { rainMm: 18, untilDay: "2027-05-19" }))],
    days: [{ ...mild, ...wet }],
  }),
  morning("cold nights hold water", {
    pots: [
      does("jade", "keep-dry", because("cold-nights-hold-water", { nightC: 3.5, limitC: 8, limit: "cut" })),
    ],
  }),
  morning("resting", { pots: [does("plumeria", "keep-dry", because("resting"))] }),
  morning("would be waterlogged", {
    pots: [carryIn("agave", because("rain-would-waterlog", { rainMm: 30, wetBaseHours: 26 }))],
    days: [{ ...mild, ...wet }],
  }),
  morning("wet before cold", {
    pots: [carryIn("jade", because("wet-before-cold", { rainMm: 9, nightC: 4, limitC: 8, limit: "stop" }))],
  }),
  morning("cold snap", {
    pots: [
      carryIn("lemon", because("cold-night", { coldestC: -2.5, limitC: 0, sure: "yes" }), {
        count: 3,
        lift: { massKg: 31, hands: "two-people", limitKg: 16 },
      }),
      does("olive", "top-cover", because("cold-night", { coldestC: -2.5, limitC: -2, sure: "no" }), {
        by: "2027-05-12T16:00Z",
      }),
    ],
    days: [{ ...mild, tempMinC: flat(-2.5), tempMaxC: flat(6) }],
    cautions: [caution("lift", { potIds: ["lemon"] })],
  }),
  morning("cold in some days, rain before", {
    pots: [
      carryIn("hibiscus", because("cold-night", { ...HURT, sure: "yes", coldDay: "2027-05-15" })),
      carryIn("jade", because("cold-night", { ...HURT, sure: "no", coldDay: "2027-05-14" })),
    ],
  }),
  morning("cold snap, no room left", {
    pots: [
      does("hibiscus", "top-cover", because("cold-night", { ...HURT, sure: "yes" }), {
        by: ONE_PM,
        notCarried: because("no-room"),
      }),
    ],
    cautions: [caution("no-room", { potIds: ["hibiscus"] })],
  }),
  morning("storm", {
    pots: [
      does("olive", "brace", because("gusts", { gustMPerS: 26, limitMPerS: 18 }), { by: ONE_PM }),
      carryIn("euphorbia", because("gusts", { gustMPerS: 26, limitMPerS: 14 })),
    ],
    days: [{ ...mild, ...wet, gustMPerS: 26, thunderHours: ["2027-05-12T13:00Z", "2027-05-12T14:00Z"] }],
    cautions: [
      caution("thunder", { from: "2027-05-12T13:00Z", to: "2027-05-12T15:00Z" }),
      caution("sap", { potIds: ["euphorbia"] }),
    ],
  }),
  morning("thunder tomorrow", {
    cautions: [caution("thunder", { from: "2027-05-13T13:00Z", to: "2027-05-13T15:00Z" })],
  }),
  morning("hail", { pots: [carryIn("agave", because("hail", { hailAt: "2027-05-12T13:00Z" }))] }),
  morning("heat", {
    pots: [
      does("fig", "shade", because("heat-and-sun", { hottestC: 38, limitC: 36 }), {
        from: "2027-05-12T09:00Z",
        by: ONE_PM,
      }),
      water("lemon", 1800, { count: 3 }),
    ],
    days: [{ ...mild, tempMinC: flat(24), tempMaxC: flat(38) }],
    cautions: [
      caution("heat", { from: "2027-05-12T10:00Z", to: "2027-05-12T17:00Z", numbers: { heatIndexC: 41 } }),
    ],
  }),
  morning("danger past", {
    pots: [
      does("aloe", "carry-out", because("danger-past", { coldestC: 8.2 }), {
        spotId: "shed",
        toSpotId: "rail",
        from: NINE,
      }),
    ],
  }),
  morning("back into the sun by steps", {
    pots: [does("aloe", "shade", because("sun-by-steps", { awayDays: 21 }))],
  }),
  morning("saucer full", {
    pots: [
      does("fig", "empty-saucer", because("saucer-full", { standsMl: 350 })),
      does("jade", "tilt", because("base-without-air", { wetBaseHours: 60, standsHours: 48 })),
    ],
  }),
  morning("work told", {
    pots: [
      does("hibiscus", "water", because("at-refill-point", { leftFrac: 0.2, refillFrac: 0.4 }), {
        amountMl: 1500,
        minutes: 0.6,
        count: 4,
      }),
      carryIn("agave", because("cold-night", HURT), {
        minutes: 3.2,
        lift: { massKg: 12.5, hands: "two-people", limitKg: 10 },
      }),
    ],
  }),
  morning("mix sheds water", {
    pots: [does("hibiscus", "soak-slowly", because("sheds-water", { leftFrac: 0.08 }), { amountMl: 1500 })],
  }),
  morning("stays wet", { pots: [does("jade", "clear-hole", because("stays-wet"))] }),
  morning("roots to be looked at", {
    pots: [does("plumeria", "look-at-roots", because("trouble-seen", { notedDay: "2027-05-10" }))],
  }),
  morning("dry and stands it", {
    pots: [
      does("agave", "none", because("stands-drought", { standsDays: 30 })),
      does("fig", "none", because("still-wet", { leftFrac: 0.8 })),
    ],
  }),
  morning("too heavy", {
    pots: [
      does(
        "olive",
        "top-cover",
        because("cold-night", { coldestC: -9, limitC: -7, sure: "yes", kills: "yes" }),
        {
          notCarried: because("too-heavy", { massKg: 85 }),
        },
      ),
    ],
  }),
  morning("weather old", {
    pots: [
      does("fig", "water", because("weather-unknown"), {
        amountMl: 300,
        confidence: { word: "about-even", shareFrac: 0.5 },
      }),
    ],
    ...age({ ageHours: 31, trust: "poor", fetchedAt: "2027-05-10T22:00Z" }),
    cautions: [caution("old-weather", { numbers: { ageHours: 31 } })],
  }),
  morning("first feed down, second used", {
    pots: [water("fig", 850)],
    ...age({ source: "fallback", memberCount: 0, trust: "reduced", ageHours: 0 }),
    cautions: [caution("no-ensemble"), caution("official-warnings")],
  }),
  morning("sunshine missing", {
    pots: [water("fig", 850)],
    ...age({
      trust: "reduced",
      standIns: [
        { quantity: "radiation", method: "cloud-cover", shareOfHoursFrac: 0.6, errorEstimate: 0.15 },
        { quantity: "wind", method: "two-metres-a-second", shareOfHoursFrac: 1, errorEstimate: 0.08 },
      ],
    }),
  }),
  morning(
    "late",
    { pots: [water("fig", 850)] },
    { timing: timed({ lateUtcMs: Date.parse("2027-05-12T08:20Z") }) },
  ),
  morning("the day before was missed", {}, { timing: timed({ missedDays: [day("2027-05-11")] }) }),
  morning(
    "five days were missed",
    {},
    { timing: timed({ missedDays: [day("2027-05-07"), day("2027-05-11")] }) },
  ),
  morning("hours for potting, a rainy Friday", {
    days: [mild, { ...mild, ...wet, day: FRIDAY }],
    pots: [
      water("fig", 850),
      potPlan("aloe", {
        spotId: "shed",
        // biome-ignore lint/suspicious/noThenProperty: the plan's own name for later deeds
        then: [
          deed({
            action: "water",
            amountMl: 400,
            by: "2027-05-14T07:00Z",
            reason: because("at-refill-point"),
          }),
        ],
      }),
      potPlan("lemon", { outlook: { ...outlook, dryUntil: FRIDAY } }),
    ],
    workWindows: [
      {
        from: "2027-05-12T06:00Z",
        to: "2027-05-12T10:00Z",
        dryShareFrac: 0.96,
        hottestHeatIndexC: 22,
        dryDaysAfter: 1,
      },
    ],
  }),
  morning("changed since yesterday", {
    pots: [water("lemon", 850, { count: 3 })],
    changesSince: [
      { potId: "lemon", was: "none", is: "water", because: "weather" },
      { potId: "fig", was: "carry-in", is: "none", because: "journal" },
      { potId: "jade", was: "keep-dry", is: "look-at-roots", because: "day-passed" },
    ],
  }),
  morning(
    "three hundred pots",
    many(300, (index) => (index % 30 === 0 ? water(`p${index}`, 200 + index) : potPlan(`p${index}`))),
    { collection: bench(300) },
  ),
];
