import { type Choices, fitsIn, gainOf, type Item, pricedGain, take } from "./packing.ts";

/** Steps after which the search gives up and the best so far stands. Chosen by us: some tens of milliseconds. */
const MOST_STEPS = 400_000;

/**
 * Searches depth first for a packing better than the one given, with prices for the bound: items whose other options
 * cannot beat it are settled beforehand, the closest calls are tried first. [FISHER1981]
 * @returns the best packing found, and whether the search ended by itself, so that it is the best there is
 */
export function branch(input: {
  items: readonly Item[];
  capacities: Float64Array;
  prices: Float64Array;
  bound: number;
  start: Choices;
}): { choices: Choices; proven: boolean } {
  const { items, prices } = input;
  const priced = items.map((item) => pricedOptions(item, prices));
  const search = settled(input, priced);
  if (search === null) return { choices: input.start, proven: true };
  const { order, now, left } = search;
  let best = { choices: input.start, gain: gainOf(items, input.start) };
  let steps = 0;
  const hopeless = (bound: number) => bound <= best.gain + tolerance(best.gain);
  const descend = (depth: number, bound: number): void => {
    if (++steps > MOST_STEPS || hopeless(bound)) return;
    if (depth === order.length) {
      const gain = gainOf(items, now);
      if (gain > best.gain) best = { choices: now.slice(), gain };
      return;
    }
    const i = order[depth]!;
    for (const { index, worth } of priced[i]!) {
      const next = bound - (priced[i]![0]!.worth - worth);
      if (hopeless(next)) break;
      const option = items[i]!.options[index];
      if (option !== undefined && !fitsIn(left, option)) continue;
      if (option !== undefined) take(left, option);
      now[i] = index;
      descend(depth + 1, next);
      if (option !== undefined) take(left, option, -1);
      now[i] = -1;
    }
  };
  descend(0, input.bound);
  return { choices: best.choices, proven: steps <= MOST_STEPS };
}

/**
 * Gives every item whose other options cannot beat the start its best; what remains is searched, the clearest first.
 * Null when those do not fit together: then nothing beats the start.
 */
function settled(
  { items, capacities, bound, start }: Parameters<typeof branch>[0],
  priced: readonly { index: number; worth: number }[][],
): { order: number[]; now: Choices; left: Float64Array } | null {
  const gap = bound - gainOf(items, start);
  const left = capacities.slice();
  const now: Choices = new Int32Array(items.length).fill(-1);
  const order: number[] = [];
  for (let i = 0; i < items.length; i++) {
    if (regret(priced[i]!) <= gap) {
      order.push(i);
      continue;
    }
    now[i] = priced[i]![0]!.index;
    const option = items[i]!.options[now[i]!];
    if (option === undefined) continue;
    if (!fitsIn(left, option)) return null;
    take(left, option);
  }
  order.sort((a, b) => regret(priced[b]!) - regret(priced[a]!) || a - b);
  return { order, now, left };
}

/** Options by priced gain, best first, "none" among them at 0. */
function pricedOptions(item: Item, prices: Float64Array): { index: number; worth: number }[] {
  const options = item.options.map((option, index) => ({ index, worth: pricedGain(option, prices) }));
  options.push({ index: -1, worth: 0 });
  return options.sort((a, b) => b.worth - a.worth || a.index - b.index);
}

/** How much is lost, in priced gain, by not taking the best option. */
function regret(options: readonly { worth: number }[]): number {
  return options[0]!.worth - (options[1]?.worth ?? 0);
}

function tolerance(gain: number): number {
  return 1e-9 * Math.max(1e-6, Math.abs(gain));
}
