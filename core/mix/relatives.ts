import type { Component, Ranged } from "./component.ts";
import { COMPONENTS } from "./library.ts";

/** Library components of the same kind, from which an unknown figure is bracketed. */
export interface Relatives {
  readonly ids: readonly string[];
  readonly components: readonly Component[];
  /** The one whose drained cup holds most nearly as much. */
  nearest(cupCapacityFrac: number): Component;
  /** Ends around a central value, as wide for its size as the widest relative's. */
  spread(name: RangedName): (mid: number) => Ranged;
}

type RangedName =
  | "dryDensityKgPerL"
  | "totalPorosityFrac"
  | "waterAt10cmFrac"
  | "waterAt50cmFrac"
  | "waterAt100cmFrac"
  | "cupCapacityFrac";

/** Same role and kind, and the same grain where any is; there is always at least one. */
export function relativesOf(like: Pick<Component, "grain" | "role" | "compost">): Relatives {
  const kin = COMPONENTS.filter(({ role, compost }) => role === like.role && compost === like.compost);
  const alike = kin.filter(({ grain }) => grain === like.grain);
  const components = alike.length > 0 ? alike : kin.length > 0 ? kin : COMPONENTS;
  return {
    ids: components.map(({ id }) => id),
    components,
    nearest: (cup) =>
      leastBy(components, (component) => Math.abs(rangeIn(component, "cupCapacityFrac").mid - cup)),
    spread: (name) => (mid) => {
      const ranges = components.map((component) => rangeIn(component, name));
      const low = Math.min(...ranges.map((range) => range.low / range.mid));
      const high = Math.max(...ranges.map((range) => range.high / range.mid));
      return { low: mid * low, mid, high: Math.min(1, Math.max(mid, mid * high)) };
    },
  };
}

/** The whole span of the relatives, with the middle one of their central values in the middle. */
export function bracketOf({ components }: Relatives, name: RangedName): Ranged {
  const ranges = components.map((component) => rangeIn(component, name));
  const mids = ranges.map(({ mid }) => mid).sort((a, b) => a - b);
  return {
    low: Math.min(...ranges.map(({ low }) => low)),
    mid: mids[Math.floor((mids.length - 1) / 2)]!,
    high: Math.max(...ranges.map(({ high }) => high)),
  };
}

function rangeIn(component: Component, name: RangedName): Ranged {
  return component[name] ?? component.waterAt10cmFrac;
}

function leastBy(components: readonly Component[], distance: (component: Component) => number): Component {
  return components.reduce((best, next) => (distance(next) < distance(best) ? next : best));
}
