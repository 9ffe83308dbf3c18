/**
 * Recommended weight limit of the revised lifting equation, kg: what nearly all healthy workers lift without raised
 * risk. [NIOSH94110 RWL = LC HM VM DM AM FM CM]
 */
export function recommendedLimitKg(lift: LiftGeometry): number {
  return (
    LOAD_CONSTANT_KG *
    horizontalMultiplier(lift.horizontalCm) *
    verticalMultiplier(lift.heightCm) *
    distanceMultiplier(lift.travelCm) *
    asymmetryMultiplier(lift.twistDeg) *
    lift.frequencyMultiplier *
    couplingMultiplier(lift.grip, lift.heightCm)
  );
}

export interface LiftGeometry {
  /** Hands in front of the ankles. */
  readonly horizontalCm: number;
  /** Hands above the floor at the start. */
  readonly heightCm: number;
  /** Vertical way of the hands. */
  readonly travelCm: number;
  readonly twistDeg: number;
  readonly frequencyMultiplier: number;
  readonly grip: "good" | "fair" | "poor";
}

/** [NIOSH94110] load constant, 51 lb. */
export const LOAD_CONSTANT_KG = 23;

/** Nearer than 25 cm counts as 25, beyond 63 cm no lift is advised. [NIOSH94110] */
export function horizontalMultiplier(horizontalCm: number): number {
  return horizontalCm > 63 ? 0 : 25 / Math.max(25, horizontalCm);
}

/** Best at knuckle height, 75 cm; above 175 cm no lift is advised. [NIOSH94110] */
export function verticalMultiplier(heightCm: number): number {
  return heightCm > 175 || heightCm < 0 ? 0 : 1 - 0.003 * Math.abs(heightCm - 75);
}

/** Shorter than 25 cm counts as 25, beyond 175 cm no lift is advised. [NIOSH94110] */
export function distanceMultiplier(travelCm: number): number {
  return travelCm > 175 ? 0 : 0.82 + 4.5 / Math.max(25, travelCm);
}

/** Beyond 135 degrees no lift is advised. [NIOSH94110] */
export function asymmetryMultiplier(twistDeg: number): number {
  return twistDeg > 135 ? 0 : 1 - 0.0032 * twistDeg;
}

/** [NIOSH94110] coupling: a fair grip is as good as a good one from 75 cm up. */
export function couplingMultiplier(grip: LiftGeometry["grip"], heightCm: number): number {
  if (grip === "good") return 1;
  return grip === "fair" ? (heightCm < 75 ? 0.95 : 1) : 0.9;
}
