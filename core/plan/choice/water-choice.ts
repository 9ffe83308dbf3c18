import type { PotNow } from "../../pot/pot-now.ts";
import type { Spread } from "../../weather/spread.ts";
import { type HarmTally, totalHarm } from "../harm/course.ts";
import { WET_TERMS, type WetTerm } from "../harm/term.ts";
import type { PlanContext } from "../plan-context.ts";
import { pourAmountMl } from "../rows/pour-amount.ts";
import { awaitsWateringIn } from "./fresh-leafy.ts";
import { daysToRefill, dueShareFrac, reachesRefillHour } from "./refill-hour.ts";
import { type Doings, type RolledCourse, rollCourse } from "./roll-course.ts";
import { pourHarm } from "./trouble.ts";
import { type WaitCosts, waitForWater } from "./wait-for-water.ts";
import { type WaterPass, waterPass } from "./water-pass.ts";

/** Water beyond what the pot lacks, so that it runs through and salts are washed out. Common practice, 10 to 20 %. */
const LEACHING_FRAC = 0.15;
/** A part watering, as a share of what is missing. Chosen by us. */
const PART_FRAC = 0.4;
/** How much sooner a part watering has to be repeated: this share of a pour more. Chosen by us. */
const PART_AGAIN = 0.5;
/**
 * Share of the cloud that must come to its refill point before tomorrow's round, for leafy plants and for those that
 * store water. Chosen by us: water asked for on less than an even chance is a pot found moist, and a grower who stops
 * believing; what stores water loses nothing by another day.
 */
const LEAST_DUE_SHARE = { leafy: 0.4, storing: 0.5 } as const;
/** Share of the usable water below which nothing is missing. Chosen by us: it is about what runs through anyway. */
const FULL_WITHIN_USABLE_FRAC = 0.15;

export type WaterDeed = "through" | "part" | "hold" | "not-due";

/** What the can should do this morning, and why not if not. */
export interface WaterChoice {
  readonly deed: WaterDeed;
  readonly amountMl: number;
  /** First working hour of today; null when there is none left. */
  readonly hour: number | null;
  /** Share of the cloud that is at its refill point before tomorrow's round. */
  readonly dueShareFrac: number;
  /** Hour at which the middle of the cloud comes to its refill point; 0 when it is there, null when not in sight. */
  readonly refillHour: number | null;
  /** Thirst over the horizon if no water is given at all. */
  readonly thirstIfNot: number;
  /** Of that, what the water saves. */
  readonly thirstSaved: number;
  /** Harm that the water itself would do, by term. */
  readonly harmDone: Readonly<Record<WetTerm, number>>;
  /** Where only a part is given: the harm that the whole would do. */
  readonly wholeWouldDo?: Readonly<Record<WetTerm, number>>;
  /** Share of the cloud in which what was decided about the water is the lesser harm. */
  readonly rightShareFrac: number;
  /** Share of the cloud in which a day's wait costs less than fetching the can. */
  readonly canWaitShareFrac: number;
  /** Rain brings this share of what is missing before the day on which waiting ends. */
  readonly rainReliefFrac: number;
  readonly wait: WaitCosts;
  /** Days until the refill point is reached again after the water given; left out where none is given. */
  readonly againDays?: Spread | null;
}

interface Pouring {
  readonly now: PotNow;
  readonly doings: Doings;
  /** The same course without water, in the scratch that is kept. */
  readonly rolled: RolledCourse;
}

/** Weighs water now against waiting, and whole against part, for a pot along a rolled course. */
export function waterChoice(context: PlanContext, pouring: Pouring): WaterChoice {
  const need = waterNeed(context, pouring.rolled, waterPass(pouring.rolled.course));
  return isAsked(context, need, pouring.now) ? weighPour(context, pouring, need) : need;
}

/** Whether a pour is to be weighed at all: due by its dryness, or a leafy plant to be watered in. */
export function isAsked(context: PlanContext, need: WaterChoice, now: PotNow): boolean {
  if (need.hour === null || missingMl(now) <= 0) return false;
  if (awaitsWateringIn(now, context.nowUtcMs)) return true;
  if (isFull(now)) return false;
  const least = LEAST_DUE_SHARE[now.values.leafy ? "leafy" : "storing"];
  return need.wait.best === 0 && need.dueShareFrac >= least;
}

/** Whether so little is missing that a can would run straight through, however soon the pot dries. */
export function isFull(now: PotNow): boolean {
  return missingMl(now) < FULL_WITHIN_USABLE_FRAC * now.inVessel.hold.usableMl;
}

/** What a course without water says about the need for it: the choice as long as no pour is weighed. */
export function waterNeed(context: PlanContext, rolled: RolledCourse, pass: WaterPass): WaterChoice {
  const wait = waitFor(context, { rolled, pass });
  const due = dueShareFrac(rolled.course);
  return {
    deed: "not-due",
    amountMl: 0,
    hour: context.days[0]!.workHours[0] ?? null,
    dueShareFrac: due,
    refillHour: reachesRefillHour(rolled.course),
    thirstIfNot: totalHarm(rolled.harm.thirst),
    thirstSaved: 0,
    harmDone: { "wet-roots": 0, "wet-wound": 0, "wet-cold": 0 },
    rightShareFrac: 1 - due,
    canWaitShareFrac: canWaitShareFrac(rolled, wait),
    rainReliefFrac: wait.best === 0 ? 0 : (pass.relief[Math.min(wait.best, pass.relief.length) - 1] ?? 0),
    wait,
  };
}

/** Water now against waiting, and whole against part, for a pot that is asked for. */
export function weighPour(context: PlanContext, pouring: Pouring, need: WaterChoice): WaterChoice {
  const { now } = pouring;
  const { wait } = need;
  const hour = need.hour!;
  const missing = missingMl(now);
  const freshLeafy = awaitsWateringIn(now, context.nowUtcMs);
  const wholeMl = firstDrinkMl(now, missing) ?? Number.POSITIVE_INFINITY;
  const wholeRolled = rollPoured(context, pouring, { hour, waterMl: wholeMl });
  const whole = effectOf(pouring, wholeRolled);
  const waiting = Math.min(...wait.byMorning.slice(1));
  if (freshLeafy || wait.byMorning[0]! + whole.extra < waiting) {
    const amountMl = pourAmountMl(Number.isFinite(wholeMl) ? wholeMl : missing * (1 + LEACHING_FRAC));
    const deed = Number.isFinite(wholeMl) ? "part" : "through";
    const rightShareFrac = freshLeafy ? 1 : need.dueShareFrac;
    return {
      ...need,
      ...whole,
      deed,
      amountMl,
      rightShareFrac,
      againDays: daysToRefill(wholeRolled.course, hour),
    };
  }
  const partMl = missing * PART_FRAC;
  const partRolled = rollPoured(context, pouring, { hour, waterMl: partMl });
  const part = effectOf(pouring, partRolled);
  if (wait.byMorning[0]! * (1 + PART_AGAIN) + part.extra < waiting) {
    const amountMl = pourAmountMl(partMl);
    const rightShareFrac = need.dueShareFrac;
    return {
      ...need,
      ...part,
      deed: "part",
      amountMl,
      rightShareFrac,
      wholeWouldDo: whole.harmDone,
      againDays: daysToRefill(partRolled.course, hour),
    };
  }
  return { ...need, ...whole, deed: "hold", thirstSaved: 0, rightShareFrac: 1 - whole.betterShareFrac };
}

/** When the next water costs least along a rolled course. */
export function waitFor(
  context: PlanContext,
  { rolled, pass }: { rolled: RolledCourse; pass: WaterPass },
): WaitCosts {
  return waitForWater({
    thirstByDay: rolled.harm.thirst.byDay,
    reliefByDay: pass.relief,
    usedByDay: pass.used,
    pourHarm: pourHarm(context.settings, missingMl(rolled.course.now)),
  });
}

function canWaitShareFrac({ course, harm }: RolledCourse, wait: WaitCosts): number {
  const { weightFrac } = course.now.cloud;
  let share = 0;
  for (const [i, weight] of weightFrac.entries()) {
    if (harm.thirst.byParticle[i]! / course.days.length < wait.byMorning[0]!) share += weight;
  }
  return share;
}

/** Millilitres of a first drink that is not a soaking; null when the pot is to be watered as usual. */
function firstDrinkMl({ aftercare, inVessel }: PotNow, missing: number): number | null {
  if (aftercare === null || aftercare.stage !== "first-drink" || aftercare.firstDrinkFrac >= 1) return null;
  return Math.min(missing, aftercare.firstDrinkFrac * inVessel.hold.capacityMl);
}

interface Poured {
  /** Harm of the water beyond going without. */
  readonly extra: number;
  readonly harmDone: WaterChoice["harmDone"];
  readonly thirstSaved: number;
  /** Share of the cloud in which the water is the lesser harm. */
  readonly betterShareFrac: number;
}

/** The same course with a pour; it lasts until the next one is tried. */
function rollPoured(
  context: PlanContext,
  { now, doings }: Pouring,
  pour: { hour: number; waterMl: number },
): RolledCourse {
  return rollCourse(context, { now, doings: { ...doings, pours: [pour] }, scratch: "tried" });
}

function effectOf({ now, rolled }: Pouring, poured: RolledCourse): Poured {
  const more = (term: WetTerm) => totalHarm(poured.harm[term]) - totalHarm(rolled.harm[term]);
  const harmDone = {
    "wet-roots": more("wet-roots"),
    "wet-wound": more("wet-wound"),
    "wet-cold": more("wet-cold"),
  };
  let better = 0;
  for (const [i, weight] of now.cloud.weightFrac.entries()) {
    if (harmOfParticle(poured, i) < harmOfParticle(rolled, i)) better += weight;
  }
  return {
    harmDone,
    extra: harmDone["wet-roots"] + harmDone["wet-wound"] + harmDone["wet-cold"],
    thirstSaved: totalHarm(rolled.harm.thirst) - totalHarm(poured.harm.thirst),
    betterShareFrac: better,
  };
}

function harmOfParticle({ harm }: { harm: Readonly<Record<string, HarmTally>> }, i: number): number {
  let sum = harm.thirst!.byParticle[i]!;
  for (const term of WET_TERMS) sum += harm[term]!.byParticle[i]!;
  return sum;
}

/** What the drained pot would hold beyond what it holds, mean of the cloud. */
export function missingMl({ cloud, inVessel }: PotNow): number {
  const { capacityFactor, waterMl, weightFrac } = cloud;
  let sum = 0;
  for (let i = 0; i < weightFrac.length; i++) {
    sum += weightFrac[i]! * (inVessel.hold.capacityMl * capacityFactor[i]! - waterMl[i]!);
  }
  return sum;
}
