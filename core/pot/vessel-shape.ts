import type { Vessel } from "./vessel.ts";

/** Inner width at a height above the base, cm. */
export function widthCmAt(vessel: Vessel, heightCm: number): number {
  return vessel.baseCm + ((vessel.topCm - vessel.baseCm) * heightCm) / vessel.heightCm;
}

/** Area of a level cut at a height above the base, cm2. */
export function areaCm2At(vessel: Vessel, heightCm: number): number {
  return areaCm2OfWidth(vessel.shape, widthCmAt(vessel, heightCm));
}

/**
 * Depth of the mix, cm. The top dressing lies within the vessel, so the mix ends below the rim by the gap or by the
 * dressing, whichever is deeper.
 */
export function mixDepthCm(vessel: Vessel): number {
  return vessel.heightCm - Math.max(vessel.rimGapCm ?? 0, vessel.topDressingCm ?? 0);
}

/** Volume between two heights above the base, mL. [volume of a frustum, exact] */
export function volumeMlBetween(vessel: Vessel, span: { fromCm: number; toCm: number }): number {
  const lower = widthCmAt(vessel, span.fromCm);
  const upper = widthCmAt(vessel, span.toCm);
  const squareMl = ((span.toCm - span.fromCm) / 3) * (lower * lower + lower * upper + upper * upper);
  return squareMl * areaCm2OfWidth(vessel.shape, 1);
}

/** Inner wall from the base to a height, without the base, cm2. */
export function wallAreaCm2To(vessel: Vessel, heightCm: number): number {
  const lower = vessel.baseCm;
  const upper = widthCmAt(vessel, heightCm);
  const slantCm = Math.hypot(heightCm, (upper - lower) / 2);
  const girth = vessel.shape === "round" ? Math.PI : 4;
  return (girth * (lower + upper) * slantCm) / 2;
}

function areaCm2OfWidth(shape: Vessel["shape"], widthCm: number): number {
  return shape === "round" ? (Math.PI * widthCm * widthCm) / 4 : widthCm * widthCm;
}
