import { integrate } from "../mix/integrate.ts";
import { type Retention, suctionCmAt, waterFracAt } from "../mix/retention.ts";
import type { Vessel } from "./vessel.ts";
import { areaCm2At, mixDepthCm, volumeMlBetween } from "./vessel-shape.ts";

/** Share of the vessel's volume to which the integral is carried out. */
const PRECISION_FRAC = 1e-10;

/**
 * Water in a vessel at rest, mL: the retention curve at suction = height above the base, plus what the base itself
 * stands at, summed over the level cuts. [MILKS1989]
 *
 * @param suctionAtBaseCm  0 for a pot that has just stopped draining, minus the depth for one that stands in water,
 *   above 0 for one that has dried
 */
export function waterMlAtRest(input: {
  retention: Retention;
  vessel: Vessel;
  suctionAtBaseCm: number;
}): number {
  const { retention, vessel, suctionAtBaseCm } = input;
  const depthCm = mixDepthCm(vessel);
  const soakedCm = Math.min(depthCm, Math.max(0, -suctionAtBaseCm));
  const soakedMl = retention.saturatedFrac * volumeMlBetween(vessel, { fromCm: 0, toCm: soakedCm });
  const drained = integrate(
    (heightCm) => areaCm2At(vessel, heightCm) * waterFracAt(retention, heightCm + suctionAtBaseCm),
    {
      from: soakedCm,
      to: depthCm,
      bends: bendsCmOf(retention).map((suctionCm) => suctionCm - suctionAtBaseCm),
      tolerance: PRECISION_FRAC * volumeMlBetween(vessel, { fromCm: 0, toCm: depthCm }),
    },
  );
  return soakedMl + drained;
}

/** Looked for once in a mix, whatever the vessel: the search takes longer than the integral. */
const BENDS_CM = new WeakMap<Retention, readonly number[]>();

function bendsCmOf(retention: Retention): readonly number[] {
  const known = BENDS_CM.get(retention);
  if (known !== undefined) return known;
  const made = [suctionCmAt(retention, retention.saturatedFrac), ...kneesCm(retention)];
  BENDS_CM.set(retention, made);
  return made;
}

/** Round the suction 1/alpha a material gives up its water; several of it bracket even a steep fall. Chosen by us. */
const KNEES = [0.25, 1, 4, 16] as const;

/** Two knees nearer than this in ratio need one bend. Chosen by us. */
const NEAR_RATIO = 2;

/** Suctions round which water falls fast, cm: a narrow fall between the nodes of the integral would go unseen. */
function kneesCm({ terms }: Retention): number[] {
  const all = terms
    .flatMap(({ curve }) => KNEES.map((factor) => factor / curve.alphaPerCm))
    .sort((a, b) => a - b);
  const apart: number[] = [];
  for (const cm of all) if (apart.length === 0 || cm >= NEAR_RATIO * apart[apart.length - 1]!) apart.push(cm);
  return apart;
}
