import type { PotNow } from "../../pot/pot-now.ts";
import type { Pour } from "../../pot/trajectory.ts";
import { totalHarm } from "../harm/course.ts";
import { refillFracNow, usableLeftFrac } from "../harm/refill-point.ts";
import type { PlanContext } from "../plan-context.ts";
import { pourAmountMl } from "../rows/pour-amount.ts";
import { meanOf } from "../rows/spread-of.ts";
import { type RolledCourse, rollCourse, stayingAt } from "./roll-course.ts";
import type { Standing } from "./standing.ts";

/** Water beyond what the pot lacks, so that it runs through and salts are washed out. Common practice, 10 to 20 %. */
const LEACHING_FRAC = 0.15;
/** A part watering, as a share of what is missing. */
const PART_FRAC = 0.4;
/** How much sooner a part watering has to be repeated: this share of a pour more. Chosen by us. */
const PART_AGAIN = 0.5;

export type WaterDeed = "through" | "part" | "hold" | "not-due";

/** What the can should do this morning, and why not if not. */
export interface WaterChoice {
  readonly deed: WaterDeed;
  readonly amountMl: number;
  readonly hour: number | null;
  /** Share of the cloud that is at its refill point before tomorrow's round. */
  readonly dueShareFrac: number;
  /** Expected thirst that the water saves, until the next round or later. */
  readonly thirstSaved: number;
  /** Expected harm that the water itself would do, by term. */
  readonly harmDone: Readonly<Record<"wet-roots" | "wet-wound" | "wet-cold", number>>;
  /** Rain brings this share of what is missing before the day on which waiting ends. */
  readonly rainReliefFrac: number;
}

/** Weighs water now against waiting, and whole against part, for a pot that stays along a rolled course. */
export function waterChoice(
  context: PlanContext,
  input: { now: PotNow; standing: Standing; rolled: RolledCourse },
): WaterChoice {
  const { now, standing } = input;
  const hour = context.days[0]!.workHours[0] ?? null;
  const { wait } = standing;
  const missing = missingMl(now);
  const common = {
    hour,
    dueShareFrac: dueShareFrac(input.rolled),
    thirstSaved: thirstSaved(standing),
    rainReliefFrac: standing.relief[Math.min(wait.best, standing.relief.length) - 1] ?? 0,
    harmDone: { "wet-roots": 0, "wet-wound": 0, "wet-cold": 0 },
  };
  const idle = { ...common, amountMl: 0 };
  if (wait.best !== 0 || hour === null || missing <= 0) return { ...idle, deed: "not-due" };
  const waiting = Math.min(...wait.byMorning.slice(1));
  const through = tryPour(context, input, { hour, waterMl: Number.POSITIVE_INFINITY });
  if (wait.byMorning[0]! + through.extra < waiting) {
    const amountMl = pourAmountMl(missing * (1 + LEACHING_FRAC));
    return { ...common, deed: "through", amountMl, harmDone: through.harmDone };
  }
  const partMl = missing * PART_FRAC;
  const part = tryPour(context, input, { hour, waterMl: partMl });
  if (wait.byMorning[0]! * (1 + PART_AGAIN) + part.extra < waiting) {
    return { ...common, deed: "part", amountMl: pourAmountMl(partMl), harmDone: part.harmDone };
  }
  return { ...idle, deed: "hold", harmDone: through.harmDone };
}

/** Harm that a pour does beyond going without, by term. */
function tryPour(
  context: PlanContext,
  { now, standing, rolled }: { now: PotNow; standing: Standing; rolled: RolledCourse },
  pour: Pour,
): { extra: number; harmDone: WaterChoice["harmDone"] } {
  const poured = rollCourse({ context, now }, stayingAt(standing.at, [pour]));
  const more = (term: "wet-roots" | "wet-wound" | "wet-cold") =>
    totalHarm(poured.harm[term]) - totalHarm(rolled.harm[term]);
  const harmDone = {
    "wet-roots": more("wet-roots"),
    "wet-wound": more("wet-wound"),
    "wet-cold": more("wet-cold"),
  };
  return { harmDone, extra: harmDone["wet-roots"] + harmDone["wet-wound"] + harmDone["wet-cold"] };
}

/** What the drained pot would hold beyond what it holds, mean of the cloud. */
export function missingMl({ cloud, inVessel }: PotNow): number {
  const missing = cloud.capacityFactor.map(
    (factor, i) => inVessel.hold.capacityMl * factor - cloud.waterMl[i]!,
  );
  return meanOf({ values: missing, weightFrac: cloud.weightFrac });
}

/** Thirst until tomorrow's round, and the rest as far as waiting longer would be chosen. */
function thirstSaved({ thirst }: Standing): number {
  return totalHarm({ byDay: thirst });
}

function dueShareFrac({ course }: RolledCourse): number {
  const { now, trajectory, days } = course;
  const refill = refillFracNow(now);
  const at = (days[0]!.toHour - 1) * trajectory.size;
  let share = 0;
  for (let i = 0; i < trajectory.size; i++) {
    const waterMl = at < 0 ? now.cloud.waterMl[i]! : trajectory.waterMl[at + i]!;
    const left = usableLeftFrac(now, { waterMl, capacityFactor: now.cloud.capacityFactor[i]! });
    if (left <= refill) share += now.cloud.weightFrac[i]!;
  }
  return share;
}
