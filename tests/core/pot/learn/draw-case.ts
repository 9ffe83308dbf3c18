import type { Mix } from "../../../../core/mix/mix.ts";
import { canopyAreaCm2 } from "../../../../core/plant/canopy.ts";
import { plantMassKg } from "../../../../core/plant/plant-mass.ts";
import type { Vessel } from "../../../../core/pot/vessel.ts";
import type { SpotForcing } from "../../../../core/site/forcing.ts";
import { seededRandom } from "../../../../core/weather/seeded-random.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";
import { forcing, GRITTY, groupValues, inVesselOf, PEATY, vessel } from "../build-pot.ts";
import { drawTruePot, type TruePot } from "./true-pot.ts";

export const START = Date.UTC(2026, 5, 1);
export const PAST_DAYS = 30;
export const AHEAD_DAYS = 60;
export const REFILL_FRAC = 0.2;

interface KnownOfCase {
  readonly vessel: Vessel;
  readonly mix: Mix;
  readonly groupId: string;
  readonly canopyWidthCm: number;
  readonly plantHeightCm: number;
}

export interface Case extends KnownOfCase {
  readonly truth: TruePot;
  readonly past: SpotForcing;
  readonly ahead: SpotForcing;
  readonly seed: number;
}

/** One invented truth with its weather, which is known, so that only the pot is to be learned. */
export function drawCase(seed: number, tested = false): Case {
  const random = seededRandom(seed);
  const pick = <T>(from: readonly T[]) => from[Math.floor(random.uniform() * from.length)]!;
  const topCm = 14 + 18 * random.uniform();
  const of = vessel({
    topCm,
    baseCm: 0.75 * topCm,
    heightCm: (0.8 + 0.3 * random.uniform()) * topCm,
    material: pick(["plastic", "plastic", "glazed", "unglazed"] as const),
    emptyMassKg: 0.5,
  });
  const groupId = pick(["desert-rose", "citrus", "hibiscus", "pelargonium", "jade"]);
  const values = groupValues(groupId);
  const mix = tested ? testedMix(values.leafy ? PEATY : GRITTY, of) : values.leafy ? PEATY : GRITTY;
  const canopyWidthCm = (0.8 + 0.7 * random.uniform()) * topCm;
  const known = { vessel: of, mix, groupId, canopyWidthCm, plantHeightCm: canopyWidthCm };
  const truth = drawTruePot({ ...plainly(known), random });
  const weather = (hourCount: number, startUtcMs: number) => {
    const days = Float64Array.from({ length: hourCount / 24 + 1 }, () => 0.6 + 0.8 * random.uniform());
    return forcing({
      hourCount,
      startUtcMs,
      et0Mm: (hour) => days[Math.floor(hour / 24)]! * dayCourse(hour),
    });
  };
  const past = weather(PAST_DAYS * 24, START);
  const ahead = weather(AHEAD_DAYS * 24, START + PAST_DAYS * 24 * HOUR_MS);
  return { ...known, truth, past, ahead, seed };
}

/** What both the grower and the invented truth start from. */
export function plainly(of: KnownOfCase) {
  const values = groupValues(of.groupId);
  return {
    inVessel: inVesselOf(of.mix, of.vessel),
    values,
    canopyAreaCm2: canopyAreaCm2(of),
    plantMassKg: plantMassKg(of, values),
    porous: of.vessel.material === "unglazed",
  };
}

/** The same mix with the grower's own test, which found what the library says. */
function testedMix(mix: Mix, of: Vessel): Mix {
  const { volumeMl, soakedMassKg, dryMassKg, capacityMl } = inVesselOf(mix, of).hold;
  const soakedMl = 1000 * (soakedMassKg - dryMassKg);
  return { ...mix, test: { potMl: volumeMl, addedMl: soakedMl, drainedMl: soakedMl - capacityMl } };
}

function dayCourse(hour: number): number {
  return 0.004 + 0.65 * Math.max(0, Math.sin((((hour % 24) - 6) / 12) * Math.PI));
}
