import { canopyAreaCm2 } from "../../plant/canopy.ts";
import { mlFromMm } from "../../pot/water-units.ts";
import type { Stage } from "../world/known-pot.ts";
import { calendarSpot, isColdTime } from "./calendar-cover.ts";
import { hasFreshCut } from "./fresh-cut.ts";
import type { MorningView, Policy, PotView } from "./policy.ts";

/** Bare mix between leaves loses a part of reference besides. [FAO56 ch. 7, single coefficient: 0.2 on average] */
const BARE_COEFFICIENT = 0.2;
/** Share of the demand that is left under a roof, and what a mild room asks for on any day. Chosen by us. */
const UNDER_ROOF_FRAC = 0.7;
const INDOORS_ET0_MM = 1.5;
/** Rain of today and tomorrow, as a share of the depletion, for which the can is left. */
const SKIP_FRAC = 0.5;

/**
 * The checkbook: one bucket of usable water a pot, charged each morning with yesterday's evapotranspiration and
 * credited with its rain, filled when the readily available part is gone. [FAO56 ch. 8] Rain in the forecast defers it.
 */
export const checkbook: Policy = {
  id: "fao56-checkbook",
  begin(stage) {
    const depletionMl = new Map<string, number>();
    return {
      morning: (view) =>
        view.pots.map((pot) => {
          const { id } = pot.known.pot;
          const usableMl = pot.known.inVessel.hold.usableMl;
          const before = pot.sincePlantedDays < 1 ? startMl(pot) : (depletionMl.get(id) ?? usableMl / 2);
          const depletion = Math.min(usableMl, Math.max(0, before + spentMl(stage, view, pot)));
          const pours = isDue(stage, view, { pot, depletion });
          depletionMl.set(id, pours ? 0 : depletion);
          return {
            pourMl: pours ? Number.POSITIVE_INFINITY : 0,
            toSpot: calendarSpot(stage, view, pot),
          };
        }),
    };
  },
};

function startMl({ known }: PotView): number {
  return known.values.leafy ? 0 : known.inVessel.hold.usableMl;
}

/** Yesterday's charge less its credit. */
function spentMl(stage: Stage, view: MorningView, { known, spot }: PotView): number {
  const { basalCoefficient, restCoefficient } = known.values;
  const { yesterday } = view.outlook;
  const { kind } = stage.spots[spot]!;
  const coefficient = isColdTime(view, { known }) ? restCoefficient : basalCoefficient;
  const et0Mm =
    kind === "indoors" ? INDOORS_ET0_MM : (kind === "open" ? 1 : UNDER_ROOF_FRAC) * yesterday.et0Mm;
  const { hold } = known.inVessel;
  const plantMl = coefficient * mlFromMm(et0Mm, canopyAreaCm2(known.pot));
  const bareMl = BARE_COEFFICIENT * mlFromMm(et0Mm, hold.surfaceAreaCm2);
  const rainMl = kind === "open" ? mlFromMm(yesterday.rainMm, hold.rimAreaCm2) : 0;
  return plantMl + bareMl - rainMl;
}

function isDue(stage: Stage, view: MorningView, of: { pot: PotView; depletion: number }): boolean {
  const { known, spot } = of.pot;
  if (hasFreshCut(of.pot)) return false;
  const { hold } = known.inVessel;
  if (of.depletion < known.values.depletionFrac * hold.usableMl) return false;
  const [today = 0, tomorrow = 0] = view.outlook.rainMm;
  const coming = mlFromMm(today + tomorrow, hold.rimAreaCm2);
  return !(stage.spots[spot]!.kind === "open" && coming >= SKIP_FRAC * of.depletion);
}
