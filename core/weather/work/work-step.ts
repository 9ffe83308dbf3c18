/** One intermediate value of a reckoning, for whoever wants to check it by hand. */
export interface WorkStep {
  /** Name with unit suffix, as everywhere in the core. */
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** Source key and equation number, or the reason where it is a rule of ours. */
  readonly equation: string;
}
