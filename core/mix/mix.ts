import type { RetentionCurve } from "./curve.ts";

export type MixId = string;

export interface MixPart {
  /** Component id, kebab-case. */
  readonly component: string;
  /** Parts by loose volume, above 0. */
  readonly parts: number;
}

/** The grower's own fill-soak-drain test. */
export interface PorosityTest {
  readonly potMl: number;
  readonly addedMl: number;
  readonly drainedMl: number;
  /** Water already in the mix before the test. */
  readonly heldBeforeMl?: number;
}

export interface Mix {
  readonly id: MixId;
  readonly name: string;
  readonly recipe:
    | { readonly kind: "parts"; readonly parts: readonly MixPart[] }
    | { readonly kind: "curve"; readonly curve: RetentionCurve; readonly dryDensityKgPerL: number };
  readonly test?: PorosityTest;
}
