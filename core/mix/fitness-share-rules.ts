import type { Component } from "./component.ts";
import type { FitnessRule, Judged, Move } from "./finding.ts";
import { isCompost, isDraining, isFine, isHolding, isNamed, isRich, mostOf, shareOf } from "./shares.ts";

/** Brought in where the mix has none of the kind. */
const USUAL_DRAINER = "pumice";
const USUAL_HOLDER = "coco-peat";

/** Parts such as 1:1:1 do not sum to exactly 1. */
const ROUNDING = 1e-9;

type Is = (component: Component) => boolean;
const none: Is = () => false;

/** A rule that a kind of component stays at or below a share; the cure goes down to `aimFrac`. */
function atMost(rule: {
  code: FitnessRule["code"];
  is: Is;
  mostFrac: number;
  aimFrac?: number;
  applies?: (mix: Judged) => boolean;
  /** What to add in its place; never the kind itself. */
  instead: (mix: Judged, not: Is) => Move;
}): FitnessRule {
  const { code, is, mostFrac, aimFrac = mostFrac, applies = () => true, instead } = rule;
  const share = (mix: Judged) => shareOf(mix.worked.portions, is);
  return {
    code,
    status: "common-practice",
    source: null,
    broken: (mix) =>
      applies(mix) && share(mix) > mostFrac + ROUNDING ? { shareFrac: share(mix), mostFrac } : null,
    cured: (mix) => share(mix) <= aimFrac + ROUNDING,
    moves: (mix) => [...lessOfMost(mix, is), instead(mix, is)],
  };
}

function lessOfMost(mix: Judged, is: Is): Move[] {
  const component = mostOf(mix.worked.portions, is);
  return component === null ? [] : [{ way: "less", component }];
}

/** More of the main draining stuff, or pumice where there is none. */
export function moreDraining(mix: Judged, not: Is = none): Move {
  const is = (component: Component) => isDraining(component) && !not(component);
  return { way: "more", component: mostOf(mix.worked.portions, is) ?? USUAL_DRAINER };
}

/** More of the main stuff that holds water, or coir where there is none. */
export function moreHolding(mix: Judged, not: Is = none): Move {
  const is = (component: Component) => isHolding(component) && !not(component);
  return { way: "more", component: mostOf(mix.worked.portions, is) ?? USUAL_HOLDER };
}

/** More of what the kind of plant lives in: stone for the drought-adapted, fibre for the leafy. */
function moreOfBase(mix: Judged, not: Is): Move {
  return mix.purpose.leafy ? moreHolding(mix, not) : moreDraining(mix, not);
}

const tooLittleDraining: FitnessRule = {
  code: "too-little-draining",
  status: "common-practice",
  source: null,
  broken: (mix) => {
    const shareFrac = shareOf(mix.worked.portions, isDraining);
    return !mix.purpose.leafy && shareFrac < 0.5 - ROUNDING
      ? { shareFrac, leastFrac: 0.5, mostFrac: 0.7 }
      : null;
  },
  cured: (mix) => shareOf(mix.worked.portions, isDraining) >= 0.5 - ROUNDING,
  moves: (mix) => [moreDraining(mix)],
};

/** Rules on the parts alone, common practice of growers without a published trial behind them. */
export const SHARE_RULES: readonly FitnessRule[] = [
  tooLittleDraining,
  atMost({
    code: "too-much-draining",
    is: isDraining,
    mostFrac: 0.7,
    applies: (mix) => !mix.purpose.leafy,
    instead: moreHolding,
  }),
  atMost({
    code: "too-open-for-leafy",
    is: isDraining,
    mostFrac: 0.5,
    applies: (mix) => mix.purpose.leafy,
    instead: moreHolding,
  }),
  atMost({ code: "too-much-compost", is: isCompost, mostFrac: 0.25, aimFrac: 0.2, instead: moreOfBase }),
  atMost({
    code: "too-much-fine",
    is: isFine,
    mostFrac: 0.5,
    applies: (mix) => !mix.purpose.leafy,
    instead: moreDraining,
  }),
  atMost({ code: "fine-sand-clogs", is: isNamed("fine-sand"), mostFrac: 0.2, instead: moreOfBase }),
  atMost({ code: "too-much-garden-soil", is: isNamed("garden-loam"), mostFrac: 0.2, instead: moreOfBase }),
  atMost({
    code: "rich-for-compact",
    is: isRich,
    mostFrac: 0.1,
    applies: (mix) => mix.purpose.compact === true,
    instead: moreOfBase,
  }),
  atMost({
    code: "locks-nitrogen",
    is: (component) => component.nutrients === "locks-nitrogen",
    mostFrac: 0.3,
    instead: moreOfBase,
  }),
];
