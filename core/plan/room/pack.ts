import { branch } from "./branch.ts";
import { fillByPrice } from "./fill-by-price.ts";
import { type Choices, gainOf, type Item, type Packing } from "./packing.ts";
import { shadowPrices } from "./shadow-prices.ts";

/** A packing this close to the bound is not searched further. Chosen by us: far below what the harms are known to. */
const CLOSE_ENOUGH_FRAC = 0.002;

/**
 * Gives each item at most one of its options so that no resource is used beyond its capacity and the gains sum to the
 * most: exactly where the search ends, else within the gap between `gain` and `bound`.
 */
export function pack(items: readonly Item[], capacities: readonly number[]): Packing {
  const stock = Float64Array.from(capacities);
  const free = freeChoices(items);
  if (fits({ items, stock, choices: free })) {
    const gain = gainOf(items, free);
    return { choices: free, gain, bound: gain };
  }
  const { prices, bound } = shadowPrices(items, stock);
  const start = fillByPrice(items, stock, prices);
  const startGain = gainOf(items, start);
  if (bound - startGain <= CLOSE_ENOUGH_FRAC * bound) return { choices: start, gain: startGain, bound };
  const { choices, proven } = branch({ items, capacities: stock, prices, bound, start });
  const gain = gainOf(items, choices);
  return { choices, gain, bound: proven ? gain : bound };
}

/** What each item would take with room for all. */
function freeChoices(items: readonly Item[]): Choices {
  return Int32Array.from(items, ({ options }) => {
    let best = -1;
    for (const [index, { gain }] of options.entries()) {
      if (gain > (options[best]?.gain ?? 0)) best = index;
    }
    return best;
  });
}

function fits(input: { items: readonly Item[]; stock: Float64Array; choices: Choices }): boolean {
  const left = input.stock.slice();
  for (const [i, choice] of input.choices.entries()) {
    for (const { resource, amount } of input.items[i]!.options[choice]?.uses ?? []) left[resource]! -= amount;
  }
  return left.every((rest) => rest >= -1e-9);
}
