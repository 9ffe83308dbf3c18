/** Something that may be given one of several options, each using up some of what is limited. */
export interface Item {
  readonly id: string;
  readonly options: readonly PackOption[];
}

export interface PackOption {
  /** What giving it is worth, above 0. */
  readonly gain: number;
  /** Amounts used, by index of the resource; those not named are not used. */
  readonly uses: readonly { readonly resource: number; readonly amount: number }[];
}

/** Option given to each item, -1 for none; in the order of the items. */
export type Choices = Int32Array;

export interface Packing {
  readonly choices: Choices;
  readonly gain: number;
  /** No packing can be worth more than this. */
  readonly bound: number;
}

/** What is left of each resource; whatever does not fit is not given. */
export function fitsIn(left: Float64Array, { uses }: PackOption): boolean {
  return uses.every(({ resource, amount }) => amount <= left[resource]! + 1e-9);
}

/** Takes what an option uses, or gives it back with `sign` -1. */
export function take(left: Float64Array, { uses }: PackOption, sign: 1 | -1 = 1): void {
  for (const { resource, amount } of uses) left[resource]! -= sign * amount;
}

/** Gain of an option less the price of what it uses. */
export function pricedGain({ gain, uses }: PackOption, prices: Float64Array): number {
  let priced = gain;
  for (const { resource, amount } of uses) priced -= prices[resource]! * amount;
  return priced;
}

/** Index and priced gain of an item's best option; -1 and 0 when none is worth its price. */
export function bestOption({ options }: Item, prices: Float64Array): { index: number; gain: number } {
  let best = { index: -1, gain: 0 };
  for (const [index, option] of options.entries()) {
    const gain = pricedGain(option, prices);
    if (gain > best.gain) best = { index, gain };
  }
  return best;
}

/** Sum of the gains chosen. */
export function gainOf(items: readonly Item[], choices: Choices): number {
  let gain = 0;
  for (const [i, choice] of choices.entries()) if (choice >= 0) gain += items[i]!.options[choice]!.gain;
  return gain;
}
