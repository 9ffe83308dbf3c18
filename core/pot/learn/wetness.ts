import { seededRandom } from "../../weather/seeded-random.ts";
import type { Tank } from "../balance/tank.ts";
import type { TankPlan } from "../balance/tank-of.ts";
import { spreadNormals } from "./draw-particles.ts";

/** Usable water left, middle and spread, by how wet the mix was when it was planted into. Chosen by us. */
const MIX_WET = {
  dry: { middleFrac: 0.08, sdFrac: 0.06 },
  moist: { middleFrac: 0.45, sdFrac: 0.15 },
} as const;

/** Sets the content at planting. */
export function setPlantedWetness(
  tank: Tank,
  input: { mixWet: "dry" | "moist" | "watered-in"; seed: number },
): void {
  if (input.mixWet === "watered-in") {
    tank.surfaceMl.fill(0);
    tank.bodyMl.fill(0);
    return;
  }
  const { middleFrac, sdFrac } = MIX_WET[input.mixWet];
  const normals = spreadNormals(tank.size, seededRandom(input.seed));
  for (let k = 0; k < tank.size; k++)
    setUsableLeft(tank, { particle: k, leftFrac: middleFrac + sdFrac * normals[k]! });
}

/** Nothing is known of the days before: anything from the refill point to full, evenly. */
export function setUnknownWetness(
  tank: Tank,
  { plan, seed }: { plan: Pick<TankPlan, "values">; seed: number },
): void {
  const random = seededRandom(seed);
  const lowFrac = plan.values.refillFrac / 2;
  const order = spreadNormals(tank.size, random);
  const ranks = [...order.keys()].sort((a, b) => order[a]! - order[b]!);
  for (const [rank, k] of ranks.entries()) {
    setUsableLeft(tank, { particle: k, leftFrac: lowFrac + ((1 - lowFrac) * (rank + 0.5)) / tank.size });
  }
}

/** Both stores to the same share of their usable water. */
function setUsableLeft(tank: Tank, input: { particle: number; leftFrac: number }): void {
  const missing = 1 - Math.min(1, Math.max(0, input.leftFrac));
  const k = input.particle;
  tank.surfaceMl[k] = missing * tank.surfaceUsableMl[k]!;
  tank.bodyMl[k] = missing * tank.bodyUsableMl[k]!;
  tank.saucerMl[k] = 0;
}
