import { waterMlAtRest } from "../pot/hold-water.ts";
import type { Vessel } from "../pot/vessel.ts";
import { mixDepthCm, volumeMlBetween } from "../pot/vessel-shape.ts";
import { bareRetention } from "./bare-retention.ts";
import type { Component, Ranged } from "./component.ts";
import { TEST_SPREAD_FRAC } from "./test-spread.ts";
import type { WorkedMix } from "./worked-mix.ts";

/**
 * Ends of what the drained pot may hold, relative to the central value. With parts from the library the components'
 * own ranges count, independent of each other; after a test, or with a measured curve, only the spread of the test.
 */
export function capacityFactor(input: { worked: WorkedMix; vessel: Vessel; capacityFrac: number }): Ranged {
  const { worked, vessel, capacityFrac } = input;
  if (!worked.libraryOnly) {
    const spread = Math.min(0.9, TEST_SPREAD_FRAC / capacityFrac);
    return { low: 1 - spread, mid: 1, high: 1 + spread };
  }
  let lowSquare = 0;
  let highSquare = 0;
  for (const { component, shareFrac } of worked.portions) {
    const heldFrac = shareFrac * capacityFracOf(component, vessel);
    const { low, high } = relativeCapacity(component);
    lowSquare += (heldFrac * (1 - low)) ** 2;
    highSquare += (heldFrac * (high - 1)) ** 2;
  }
  const scale = capacityFrac * (1 - worked.shrinkFrac);
  const roomFrac = worked.retention.saturatedFrac / capacityFrac;
  return {
    low: Math.max(0.05, 1 - Math.sqrt(lowSquare) / scale),
    mid: 1,
    high: Math.max(1, Math.min(roomFrac, 1 + Math.sqrt(highSquare) / scale)),
  };
}

/** A component's own range, its low end after ordinary watering. */
function relativeCapacity(component: Component): { low: number; high: number } {
  const { low, mid, high } = component.cupCapacityFrac ?? component.waterAt10cmFrac;
  return { low: Math.min(low / mid, component.asWateredFactor?.low ?? 1), high: high / mid };
}

function capacityFracOf(component: Component, vessel: Vessel): number {
  const volumeMl = volumeMlBetween(vessel, { fromCm: 0, toCm: mixDepthCm(vessel) });
  return (
    waterMlAtRest({
      retention: bareRetention(component.curve),
      vessel,
      suctionAtBaseCm: -(vessel.saucerCm ?? 0),
    }) / volumeMl
  );
}
