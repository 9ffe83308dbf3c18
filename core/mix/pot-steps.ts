import { airySuctionCm } from "../pot/hold-layer.ts";
import type { WorkStep } from "../weather/work/work-step.ts";
import type { FilledPot } from "./filled-pot.ts";
import type { PotWork } from "./pot-work.ts";
import { waterFracAt } from "./retention.ts";

const CURVE = "VG1980 eq. 21 with m = 1 - 1/n";

/** The way from a filled pot to its figures. A suction that is never reached has no number and is left out. */
export function potSteps(pot: FilledPot, work: PotWork): WorkStep[] {
  const steps = [
    step("volumeMl", work.volumeMl, "mL", "geometry: frustum from base to rim"),
    ...solidSteps(work),
    step(
      "totalPorosityFrac",
      work.totalPorosityFrac,
      "1",
      pot.solids ? PACKED : "saturated share of the curve",
    ),
    step(
      "saturatedFrac",
      pot.retention.saturatedFrac,
      "1",
      pot.solids ? SOAKED : "saturated share of the curve",
    ),
    ...heightSteps(pot),
    ...holdSteps(pot, work),
  ];
  if (work.drainedMassKg !== undefined)
    steps.push(step("drainedMassKg", work.drainedMassKg, "kg", "dry mix and its water at 1 kg/L"));
  return steps.filter(({ value }) => Number.isFinite(value));
}

const PACKED = "1 less the components' solids, over the shrunk volume";
const SOAKED = "total porosity times the components' own saturated part of their pores";

function solidSteps({ shrinkFrac, dryDensityKgPerL }: PotWork): WorkStep[] {
  if (shrinkFrac === undefined || dryDensityKgPerL === undefined) return [];
  return [
    step("shrinkFrac", shrinkFrac, "1", "DELARRARD1999 linear packing"),
    step("dryDensityKgPerL", dryDensityKgPerL, "kg/L", "average by volume, over the shrunk volume"),
  ];
}

/** Retention where the pot is wettest, in the middle and driest. */
function heightSteps({ retention, vessel, solids }: FilledPot): WorkStep[] {
  const equation = solids ? `${CURVE}, components added at equal suction` : CURVE;
  const suctionAtBaseCm = 0 - (vessel.saucerCm ?? 0);
  const at = (name: string, heightCm: number) =>
    step(name, waterFracAt(retention, heightCm + suctionAtBaseCm), "1", equation);
  return [
    step("suctionAtBaseCm", suctionAtBaseCm, "cm", "at rest: 0 at the base, less the water in the saucer"),
    at("waterAtBaseFrac", 0),
    at("waterAtMiddleFrac", vessel.heightCm / 2),
    at("waterAtRimFrac", vessel.heightCm),
  ];
}

function holdSteps({ retention, solids }: FilledPot, work: PotWork): WorkStep[] {
  const { unusableFrac } = retention;
  const grains = solids ? ", half of the water inside loose grains counted as usable" : "";
  return [
    step("capacityMl", work.capacityMl, "mL", "MILKS1989 integral of water over height times area"),
    step("capacityFrac", work.capacityFrac, "1", "capacity over volume"),
    step("airSpaceFrac", work.airSpaceFrac, "1", "total porosity less capacity"),
    step("unusableFrac", unusableFrac, "1", `VEIHMEYER1949 1.5 MPa; ${CURVE}${grains}`),
    step("unusableMl", unusableFrac * work.volumeMl, "mL", "unusable share times volume"),
    step("usableMl", work.usableMl, "mL", "capacity less unusable, not below 0"),
    step(
      "airySuctionCm",
      airySuctionCm(retention),
      "cm",
      `GRABLE1968 10 % air; ${CURVE}, solved for suction`,
    ),
    step(
      "wetLayerCm",
      work.wetLayerCm,
      "cm",
      "that suction as a height, lifted by the saucer, not above the rim",
    ),
  ];
}

function step(name: string, value: number, unit: string, equation: string): WorkStep {
  return { name, value, unit, equation };
}
