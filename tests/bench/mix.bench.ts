import { componentsById } from "../../core/mix/library.ts";
import type { Mix } from "../../core/mix/mix.ts";
import { mixInVessel } from "../../core/mix/mix-in-vessel.ts";
import { potWork } from "../../core/mix/pot-work.ts";
import { moistureProfile } from "../../core/pot/profile.ts";
import type { Vessel } from "../../core/pot/vessel.ts";

const PARTS = [
  { component: "pumice", parts: 2 },
  { component: "coco-peat", parts: 1 },
  { component: "grit", parts: 1 },
];
const VESSEL: Vessel = { shape: "round", topCm: 20, baseCm: 14, heightCm: 18, material: "plastic" };
const MIX: Mix = { id: "mix", name: "mix", recipe: { kind: "parts", parts: PARTS } };
const TESTED: Mix = { ...MIX, test: { potMl: 1000, addedMl: 560, drainedMl: 240 } };
const ROUNDS = 400;

/** Mean milliseconds of a call once warm. */
function meanMs(call: () => unknown): string {
  for (let i = 0; i < ROUNDS / 4; i++) call();
  const from = performance.now();
  for (let i = 0; i < ROUNDS; i++) call();
  return ((performance.now() - from) / ROUNDS).toFixed(3);
}

/** What it costs to say what a mix of three components holds in a vessel, and to draw it. */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const components = componentsById();
  const held = mixInVessel({ mix: MIX, vessel: VESSEL, components });
  if (!held.ok) throw new Error("the bench's own mix is refused");
  const { retention, hold } = held.value;
  return {
    name: "mix in a vessel, ms a call",
    lines: [
      `potWork ${meanMs(() => potWork({ mix: PARTS, vessel: VESSEL }, components))}`,
      `mixInVessel ${meanMs(() => mixInVessel({ mix: MIX, vessel: VESSEL, components }))}`,
      `mixInVessel with a porosity test ${meanMs(() => mixInVessel({ mix: TESTED, vessel: VESSEL, components }))}`,
      `moistureProfile ${meanMs(() => moistureProfile({ retention, vessel: VESSEL, waterMl: 0.6 * hold.capacityMl }))}`,
    ],
  };
}
