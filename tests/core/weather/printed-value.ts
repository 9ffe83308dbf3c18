import { expect } from "vitest";

/** A value as its source prints it, with what we reckon; `slack` widens the tolerance and says why. */
export interface PrintedCase {
  readonly what: string;
  readonly got: number;
  readonly printed: string;
  readonly slack?: { readonly by: number; readonly why: string };
}

/** Half of the last printed digit; a hair more, for values that lie on the edge of rounding. */
export function halfLastDigit(printed: string): number {
  const decimals = printed.includes(".") ? printed.length - printed.indexOf(".") - 1 : 0;
  return 0.5 * 10 ** -decimals * (1 + 1e-9);
}

export function expectPrinted({ what, got, printed, slack }: PrintedCase): void {
  const miss = Math.abs(got - Number(printed));
  const allowed = slack?.by ?? halfLastDigit(printed);
  expect(miss, `${what}: ${got} against ${printed} printed`).toBeLessThanOrEqual(allowed);
  if (slack)
    expect(miss, `${what}: slack "${slack.why}" is not needed`).toBeGreaterThan(halfLastDigit(printed));
}
