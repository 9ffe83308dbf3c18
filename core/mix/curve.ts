/** Retention curve of van Genuchten with m = 1 - 1/n; water as a share of the mix volume. */
export interface RetentionCurve {
  readonly residualFrac: number;
  readonly saturatedFrac: number;
  readonly alphaPerCm: number;
  /** Above 1. */
  readonly n: number;
}
