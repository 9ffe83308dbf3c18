import { describe, expect, test } from "vitest";
import { LEAST_AIR_FRAC, wetLayerCm } from "../../../core/pot/hold-layer.ts";
import { waterMlAtRest } from "../../../core/pot/hold-water.ts";
import { moistureProfile, suctionAtBaseCmOf } from "../../../core/pot/profile.ts";
import { areaCm2At, volumeMlBetween } from "../../../core/pot/vessel-shape.ts";
import { cylinder, worked } from "../mix/build-mix.ts";

const { retention } = worked({ peat: 2, "coarse-sand": 1 });
const vessel = { ...cylinder(18), topCm: 20, baseCm: 14 };
const capacityMl = waterMlAtRest({ retention, vessel, suctionAtBaseCm: 0 });
const fullMl = retention.saturatedFrac * volumeMlBetween(vessel, { fromCm: 0, toCm: 18 });

/** Water under the drawn profile, by trapezoids over the level cuts. */
function drawnMl(profile: ReturnType<typeof moistureProfile>): number {
  const { heightCm, waterFrac } = profile;
  let sum = 0;
  for (let i = 1; i < heightCm.length; i++) {
    const step = heightCm[i]! - heightCm[i - 1]!;
    const low = areaCm2At(vessel, heightCm[i - 1]!) * waterFrac[i - 1]!;
    sum += (step * (low + areaCm2At(vessel, heightCm[i]!) * waterFrac[i]!)) / 2;
  }
  return sum;
}

describe("how water lies in a pot", () => {
  test("the drawn profile holds the water that it was drawn for, from soaked to nearly dry", () => {
    for (const share of [0, 0.02, 0.1, 0.3, 0.6, 0.9, 1]) {
      const waterMl = share * fullMl;
      expect(Math.abs(drawnMl(moistureProfile({ retention, vessel, waterMl })) - waterMl)).toBeLessThan(
        0.003 * fullMl,
      );
    }
  });

  test("a pot that has just drained has no suction at its base and its wet layer where the air runs out", () => {
    expect(suctionAtBaseCmOf({ retention, vessel, waterMl: capacityMl })).toBeCloseTo(0, 3);
    const { heightCm, airFrac } = moistureProfile({ retention, vessel, waterMl: capacityMl });
    const layer = wetLayerCm({ retention, vessel });
    for (const [i, height] of heightCm.entries()) {
      if (Math.abs(height - layer) > 0.01) expect(airFrac[i]! < LEAST_AIR_FRAC).toBe(height < layer);
    }
  });

  test("wetter below than above, water and air filling the pores that can fill", () => {
    const { waterFrac, airFrac } = moistureProfile({ retention, vessel, waterMl: 0.7 * capacityMl });
    for (let i = 1; i < waterFrac.length; i++) expect(waterFrac[i]!).toBeLessThanOrEqual(waterFrac[i - 1]!);
    for (const [i, water] of waterFrac.entries())
      expect(water + airFrac[i]!).toBeCloseTo(retention.saturatedFrac, 12);
  });

  test("more water than the pores take is drawn as full", () => {
    const { airFrac } = moistureProfile({ retention, vessel, waterMl: 2 * fullMl });
    expect(Math.max(...airFrac)).toBe(0);
  });
});
