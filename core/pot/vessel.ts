/** A pot as a frustum. Inner measures; the mix fills it to `rimGapCm` below the rim. */
export interface Vessel {
  readonly shape: "round" | "square";
  /** Inner width at the rim. */
  readonly topCm: number;
  /** Inner width at the base. */
  readonly baseCm: number;
  readonly heightCm: number;
  readonly material: "plastic" | "glazed" | "unglazed" | "fabric" | "metal" | "wood";
  /** Height of the mix's surface below the rim; 0 when left out. */
  readonly rimGapCm?: number;
  /** Depth of water the saucer can hold up around the base; no saucer when left out. */
  readonly saucerCm?: number;
  /** Grit or stone on top of the mix. */
  readonly topDressingCm?: number;
  /** Weight of the empty vessel. */
  readonly emptyMassKg?: number;
}
