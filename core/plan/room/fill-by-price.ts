import { type Choices, fitsIn, type Item, pricedGain, take } from "./packing.ts";

/**
 * A good packing from prices: offers in the order of their priced gain, each given if it still fits; then single
 * moves and exchanges of two as long as they gain.
 */
export function fillByPrice(items: readonly Item[], capacities: Float64Array, prices: Float64Array): Choices {
  const left = capacities.slice();
  const choices: Choices = new Int32Array(items.length).fill(-1);
  for (const { item, option } of offersByPrice(items, prices)) {
    const chosen = items[item]!.options[option]!;
    if (choices[item] !== -1 || !fitsIn(left, chosen)) continue;
    take(left, chosen);
    choices[item] = option;
  }
  improve({ items, left, choices, triesLeft: MOST_TRIES });
  return choices;
}

function offersByPrice(items: readonly Item[], prices: Float64Array) {
  return items
    .flatMap(({ options }, item) =>
      options.map((one, option) => ({ item, option, worth: pricedGain(one, prices), gain: one.gain })),
    )
    .sort((a, b) => b.worth - a.worth || b.gain - a.gain || a.item - b.item || a.option - b.option);
}

interface Filling {
  readonly items: readonly Item[];
  readonly left: Float64Array;
  readonly choices: Choices;
  /** Exchanges that may still be tried. */
  triesLeft: number;
}

/** Exchanges tried at most. Chosen by us: a fraction of a second. */
const MOST_TRIES = 150_000;

/** Rounds over all items; ends by itself, as every move gains. */
function improve(state: Filling): void {
  for (let gained = true; gained; ) {
    gained = false;
    for (let item = 0; item < state.items.length; item++) gained = moveOne(state, item) || gained;
    for (let item = 0; item < state.items.length; item++) gained = exchange(state, item) || gained;
  }
}

/** Gives one item a better option that fits. */
function moveOne({ items, left, choices }: Filling, item: number): boolean {
  const { options } = items[item]!;
  const old = options[choices[item]!];
  if (old !== undefined) take(left, old, -1);
  let best = choices[item]!;
  for (const [index, option] of options.entries()) {
    if (option.gain > (options[best]?.gain ?? 0) + 1e-12 && fitsIn(left, option)) best = index;
  }
  const moved = best !== choices[item];
  choices[item] = best;
  if (best >= 0) take(left, options[best]!);
  return moved;
}

/** Lets an item without room, or with less than its best, push one other out or aside when both together gain. */
function exchange(state: Filling, item: number): boolean {
  const { items, choices } = state;
  const { options } = items[item]!;
  for (const [wanted, option] of options.entries()) {
    if (option.gain <= (options[choices[item]!]?.gain ?? 0) + 1e-12) continue;
    for (let other = 0; other < items.length && state.triesLeft > 0; other++) {
      if (other === item || choices[other]! < 0) continue;
      state.triesLeft--;
      if (exchangeGains(state, { item, wanted, other })) return true;
    }
  }
  return false;
}

/** Tries one exchange; leaves all as it was when nothing is gained. */
function exchangeGains(state: Filling, pair: { item: number; wanted: number; other: number }): boolean {
  const { items, left, choices } = state;
  const { item, wanted, other } = pair;
  const before = [choices[item]!, choices[other]!] as const;
  const gainBefore = gainAt(state, item) + gainAt(state, other);
  put(state, item, -1);
  put(state, other, -1);
  if (fitsIn(left, items[item]!.options[wanted]!)) {
    put(state, item, wanted);
    moveOne(state, other);
    if (gainAt(state, item) + gainAt(state, other) > gainBefore + 1e-12) return true;
    put(state, item, -1);
    put(state, other, -1);
  }
  put(state, item, before[0]);
  put(state, other, before[1]);
  return false;
}

function gainAt({ items, choices }: Filling, item: number): number {
  return items[item]!.options[choices[item]!]?.gain ?? 0;
}

/** Sets an item's choice and keeps what is left in step. */
function put({ items, left, choices }: Filling, item: number, choice: number): void {
  const { options } = items[item]!;
  const old = options[choices[item]!];
  const next = options[choice];
  if (old !== undefined) take(left, old, -1);
  if (next !== undefined) take(left, next);
  choices[item] = choice;
}
