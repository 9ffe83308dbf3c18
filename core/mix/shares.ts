import type { Portion } from "./blend.ts";
import type { Component } from "./component.ts";

type Test = (component: Component) => boolean;

/** Share of the loose volume that components of a kind make up. */
export function shareOf(portions: readonly Portion[], is: Test): number {
  return portions.reduce((sum, { component, shareFrac }) => (is(component) ? sum + shareFrac : sum), 0);
}

/** The component of a kind with the largest share; null where there is none. */
export function mostOf(portions: readonly Portion[], is: Test): string | null {
  let most: Portion | null = null;
  for (const portion of portions) {
    if (is(portion.component) && (most === null || portion.shareFrac > most.shareFrac)) most = portion;
  }
  return most === null ? null : most.component.id;
}

export const isDraining: Test = (component) => component.role === "draining";
export const isHolding: Test = (component) => component.role === "holding" && !component.compost;
export const isCompost: Test = (component) => component.compost;
export const isFine: Test = (component) => component.grain === "fine";
export const isRich: Test = (component) => component.nutrients === "rich";

/** One given component. */
export function isNamed(id: string): Test {
  return (component) => component.id === id;
}
