import { bestOption, type Item } from "./packing.ts";

/** Steps of the search for prices. Chosen by us: beyond this the bound hardly moves. */
const STEPS = 160;

/**
 * A price for each limited resource that makes the sum of what every item would buy, plus the worth of the stock, an
 * upper bound on any packing; the prices that make it least, by subgradient steps. [FISHER1981 Lagrangian relaxation]
 */
export function shadowPrices(
  items: readonly Item[],
  capacities: Float64Array,
): { prices: Float64Array; bound: number } {
  let prices = new Float64Array(capacities.length);
  let at = boundAt({ items, capacities, prices });
  let best = { prices, bound: at.bound };
  const unit = unitPrices(items, capacities.length);
  for (let step = 1; step <= STEPS; step++) {
    const { used } = at;
    const length = 1 / (1 + step / 6);
    prices = prices.map((price, r) => {
      const over = (used[r]! - capacities[r]!) / Math.max(capacities[r]!, used[r]!, 1e-9);
      return Math.max(0, price + unit[r]! * length * over);
    });
    at = boundAt({ items, capacities, prices });
    if (at.bound < best.bound) best = { prices, bound: at.bound };
  }
  return best;
}

/** The bound at some prices, and how much of each resource would be bought. */
export function boundAt(input: { items: readonly Item[]; capacities: Float64Array; prices: Float64Array }): {
  bound: number;
  used: Float64Array;
} {
  const { capacities, prices } = input;
  const used = new Float64Array(capacities.length);
  let bound = 0;
  for (const [r, price] of prices.entries()) bound += price * capacities[r]!;
  for (const item of input.items) {
    const { index, gain } = bestOption(item, prices);
    bound += gain;
    for (const { resource, amount } of item.options[index]?.uses ?? []) used[resource]! += amount;
  }
  return { bound, used };
}

/** A step that matters: the middle gain for each unit of a resource among the options that use it. */
function unitPrices(items: readonly Item[], count: number): Float64Array {
  const perUnit: number[][] = Array.from({ length: count }, () => []);
  for (const { options } of items) {
    for (const { gain, uses } of options) {
      for (const { resource, amount } of uses) if (amount > 0) perUnit[resource]!.push(gain / amount);
    }
  }
  return Float64Array.from(perUnit, (values) => {
    values.sort((a, b) => a - b);
    return values[Math.floor(values.length / 2)] ?? 0;
  });
}
