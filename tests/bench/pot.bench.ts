import { drawParticles } from "../../core/pot/learn/draw-particles.ts";
import { cloudOf } from "../../core/pot/particles.ts";
import type { PotNow } from "../../core/pot/pot-now.ts";
import { rollOut, trajectoryFor } from "../../core/pot/roll-out.ts";
import type { Trajectory } from "../../core/pot/trajectory.ts";
import type { Vessel } from "../../core/pot/vessel.ts";
import type { SpotForcing } from "../../core/site/forcing.ts";
import { seededRandom } from "../../core/weather/seeded-random.ts";
import { GRITTY, groupValues, PEATY, tankPlan, vessel } from "../core/pot/build-pot.ts";
import { bestCpuMs } from "./best-cpu-ms.ts";

const MEMBER_COUNT = 51;
const HOUR_COUNT = 168;
const ROUNDS = 30;

/** Speed of the full balance, roll-outs and all, on one thread, and beside it a loop stripped to one bucket. */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const forcing = inventedForcing();
  const pots = inventedPots();
  const into = trajectoryFor(MEMBER_COUNT, HOUR_COUNT);
  const balance = perSecond(pots.length, () => {
    for (const now of pots) {
      rollOut(
        {
          now,
          stretches: [{ fromHour: 0, forcing }],
          pours: [{ hour: 30, waterMl: 500 }],
          hourCount: HOUR_COUNT,
        },
        into,
      );
    }
  });
  const bare = perSecond(pots.length, () => {
    for (const now of pots) bareLoop(now, forcing, into);
  });
  const few = heapAfter(pots.slice(0, 4), forcing, into);
  const many = heapAfter([...pots, ...pots, ...pots, ...pots], forcing, into);
  return {
    name: `balance, ${pots.length} pots x ${MEMBER_COUNT} members x ${HOUR_COUNT} hours`,
    lines: [
      `${(balance / 1e6).toFixed(1)} million pot-member-hours a second, full balance with its four columns`,
      `${(bare / 1e6).toFixed(1)} million in a bare loop of one bucket with the same columns`,
      `ratio ${(balance / bare).toFixed(2)}`,
      `${((1000 * pots.length * MEMBER_COUNT * HOUR_COUNT) / balance).toFixed(1)} ms for all pots`,
      `heap in use after 4 pots ${few.toFixed(1)} MB, after ${4 * pots.length} pots ${many.toFixed(1)} MB`,
    ],
  };
}

function perSecond(potCount: number, once: () => void): number {
  const ms = bestCpuMs({ rounds: ROUNDS, warmUps: 5 }, once);
  return (1000 * potCount * MEMBER_COUNT * HOUR_COUNT) / ms;
}

/** One bucket: rain in, drain, one loss that falls with dryness. Reads and writes the same columns. */
function bareLoop(now: PotNow, forcing: SpotForcing, into: Trajectory): void {
  const { et0Mm, rainMm } = forcing;
  const { waterMl, drainedMl, wettedMl, wetBase } = into;
  const { capacityFactor, thirstFactor } = now.cloud;
  const content = now.cloud.waterMl.slice();
  const capacityMl = now.inVessel.hold.capacityMl;
  for (let hour = 0; hour < HOUR_COUNT; hour++) {
    for (let k = 0; k < MEMBER_COUNT; k++) {
      const i = hour * MEMBER_COUNT + k;
      const most = capacityMl * capacityFactor[k]!;
      const wetted = rainMm[i]! * 30;
      const full = content[k]! + wetted;
      const held = Math.min(full, most);
      const asked = et0Mm[i]! * 40 * thirstFactor[k]!;
      const eased = held > 0.5 * most ? 1 : (2 * held) / most;
      content[k] = held - asked * eased;
      waterMl[i] = content[k]!;
      drainedMl[i] = full - held;
      wettedMl[i] = wetted;
      wetBase[i] = full > most ? 1 : 0;
    }
  }
}

function heapAfter(pots: readonly PotNow[], forcing: SpotForcing, into: Trajectory): number {
  for (const now of pots) {
    rollOut({ now, stretches: [{ fromHour: 0, forcing }], pours: [], hourCount: HOUR_COUNT }, into);
  }
  (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed / 1e6;
}

function inventedPots(): PotNow[] {
  const vessels: Vessel[] = [
    vessel(),
    vessel({ topCm: 30, baseCm: 24, heightCm: 28 }),
    vessel({ material: "unglazed", topCm: 16, baseCm: 11, heightCm: 15 }),
    vessel({ topDressingCm: 1.5 }),
    vessel({ saucerCm: 2 }),
    vessel({ material: "fabric", topCm: 34, baseCm: 34, heightCm: 30 }),
  ];
  const groups = ["desert-rose", "citrus", "cactus-desert", "hibiscus"];
  return vessels.flatMap((of, v) =>
    groups.map((group, g) => inventedPot(of, { group, seed: 10 * v + g + 1 })),
  );
}

function inventedPot(of: Vessel, { group, seed }: { group: string; seed: number }): PotNow {
  const values = groupValues(group);
  const canopyWidthCm = values.leafy ? 1.6 * of.topCm : 0.8 * of.topCm;
  const plan = tankPlan({ vessel: of, mix: values.leafy ? PEATY : GRITTY, values, canopyWidthCm });
  const particles = drawParticles({ size: MEMBER_COUNT, seed, inVessel: plan.inVessel, plantMassKg: 1 });
  const pot = {
    id: `${group}-${seed}`,
    name: "",
    groupId: group,
    canopyWidthCm,
    plantHeightCm: 30,
    firstSpotId: "a",
  };
  return {
    pot,
    values,
    vessel: of,
    inVessel: plan.inVessel,
    spotId: "a",
    gone: false,
    plantedUtcMs: 0,
    aftercare: null,
    rest: { restingShareFrac: 0.1, why: "warm-growth" },
    cloud: cloudOf(particles, plan.inVessel.hold),
    lastWateredUtcMs: null,
    doubts: [],
    wetAboveFrac: plan.wetAboveFrac,
    uptakeShareFrac: 1,
  };
}

/** Sunny days with members apart, a shower in some of them. */
function inventedForcing(): SpotForcing {
  const random = seededRandom(7);
  const scale = Float64Array.from({ length: MEMBER_COUNT }, () => 0.7 + 0.6 * random.uniform());
  const wet = Float64Array.from({ length: MEMBER_COUNT }, () =>
    random.uniform() < 0.6 ? 4 * random.uniform() : 0,
  );
  const column = (f: (hour: number, member: number) => number) =>
    Float64Array.from({ length: HOUR_COUNT * MEMBER_COUNT }, (_, i) =>
      f(Math.floor(i / MEMBER_COUNT), i % MEMBER_COUNT),
    );
  const tempC = column((hour) => 22 + 6 * Math.sin((((hour % 24) - 9) / 12) * Math.PI));
  return {
    spotId: "a",
    startUtcMs: 0,
    hourCount: HOUR_COUNT,
    memberCount: MEMBER_COUNT,
    et0Mm: column(
      (hour, m) => Math.max(0.004, Math.sin((((hour % 24) - 6) / 12) * Math.PI) * 0.65) * scale[m]!,
    ),
    rainMm: column((hour, m) => (hour % 56 > 50 ? wet[m]! : 0)),
    tempC,
    plantTempC: tempC,
    lightMjPerM2: tempC,
    gustMPerS: new Float64Array(HOUR_COUNT),
  };
}
