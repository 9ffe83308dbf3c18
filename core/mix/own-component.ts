import type { Outcome, Problem } from "../problem.ts";
import { type Component, type Ranged, TOLD_FIGURES } from "./component.ts";
import type { RetentionCurve } from "./curve.ts";
import { cupCapacityFracOf, curveThroughCup, curveThroughPoints } from "./curve-fit.ts";
import { curveWaterFrac } from "./curve-water.ts";
import { draftProblems, mostPorosityFrac } from "./own-component-checks.ts";
import { bracketOf, type Relatives, relativesOf } from "./relatives.ts";

/** What a grower knows of a component. What must be known is asked for; the rest is bracketed from its relatives. */
export interface ComponentDraft {
  readonly id: string;
  readonly name?: string;
  readonly grain?: Component["grain"];
  readonly role?: Component["role"];
  readonly compost?: boolean;
  readonly grainMm?: number;
  readonly crumbly?: boolean;
  readonly dryDensityKgPerL?: number;
  readonly totalPorosityFrac?: number;
  /** What a drained straight-sided cup some 9 cm tall holds. */
  readonly cupCapacityFrac?: number;
  readonly waterAt10cmFrac?: number;
  readonly waterAt50cmFrac?: number;
  readonly waterAt100cmFrac?: number;
  readonly repellentBelowFrac?: number;
  readonly prepare?: Component["prepare"];
  readonly nutrients?: Component["nutrients"];
  readonly caution?: Component["caution"];
}

export interface OwnComponent {
  readonly component: Component;
  /** One for each figure that was bracketed: code "bracketed", the field as path, the bracket and the relatives. */
  readonly notes: readonly Problem[];
}

/** Spread of a grower's own measurement, relative for densities and in points for shares. Chosen by us. */
const WEIGHED_SPREAD = 0.1;
const MEASURED_SPREAD_FRAC = 0.03;

/** Pores that do not fill when soaked: trapped air. Chosen by us. */
const TRAPPED_AIR_FRAC = 0.05;

/**
 * A component from what the grower knows. Nothing is guessed in silence: what has no figure gets the whole span of the
 * library's relatives and a note that says so; without grain, role or kind there are no relatives, so they are asked for.
 */
export function ownComponent(draft: ComponentDraft): Outcome<OwnComponent> {
  const problems = draftProblems(draft);
  if (problems.length > 0) return { ok: false, problems };
  const relatives = relativesOf({ grain: draft.grain!, role: draft.role!, compost: draft.compost! });
  const notes: Problem[] = [];
  const figure = (name: MeasuredName) => {
    const given = draft[name];
    if (given !== undefined) return measured(name, given);
    const bracket = possible(draft, name, bracketOf(relatives, name));
    notes.push({ code: "bracketed", path: [name], data: { ...bracket, relatives: relatives.ids } });
    return bracket;
  };
  const unbounded = unboundedProblems(draft, relatives);
  if (unbounded.length > 0) return { ok: false, problems: unbounded };
  const totalPorosityFrac = figure("totalPorosityFrac");
  const dryDensityKgPerL = figure("dryDensityKgPerL");
  const water = waterOf({ draft, relatives, porosityMid: totalPorosityFrac.mid, figure });
  return {
    ok: true,
    value: { component: filled(draft, { dryDensityKgPerL, totalPorosityFrac, ...water }), notes },
  };
}

type MeasuredName = "dryDensityKgPerL" | "totalPorosityFrac" | "cupCapacityFrac";
type WaterName = "waterAt10cmFrac" | "waterAt50cmFrac" | "waterAt100cmFrac";
type Water = Pick<Component, WaterName | "cupCapacityFrac" | "curve">;

const SUCTION_CM: Readonly<Record<WaterName, number>> = {
  waterAt10cmFrac: 10,
  waterAt50cmFrac: 50,
  waterAt100cmFrac: 100,
};

/** A density that may differ so much among relatives says nothing; the grower weighs a litre instead. */
const WIDEST_DENSITY_RATIO = 5;

function unboundedProblems(draft: ComponentDraft, relatives: Relatives): Problem[] {
  if (draft.dryDensityKgPerL !== undefined) return [];
  const { low, high } = bracketOf(relatives, "dryDensityKgPerL");
  if (high / low <= WIDEST_DENSITY_RATIO) return [];
  return [{ code: "asked-for", path: ["dryDensityKgPerL"], data: { low, high, relatives: relatives.ids } }];
}

/** Pores leave room for the solids that were weighed and for the water that was seen. */
function possible(draft: ComponentDraft, name: MeasuredName, bracket: Ranged): Ranged {
  if (name !== "totalPorosityFrac") return bracket;
  const wettest = Math.max(draft.cupCapacityFrac ?? 0, draft.waterAt10cmFrac ?? 0);
  const low = Math.max(bracket.low, wettest);
  const high = Math.max(low, Math.min(bracket.high, mostPorosityFrac(draft.dryDensityKgPerL ?? 0)));
  const mid = bracket.mid >= low && bracket.mid <= high ? bracket.mid : (low + high) / 2;
  return { low, mid, high };
}

function measured(name: string, mid: number): Ranged {
  if (name === "dryDensityKgPerL")
    return { low: mid * (1 - WEIGHED_SPREAD), mid, high: mid * (1 + WEIGHED_SPREAD) };
  return { low: Math.max(0, mid - MEASURED_SPREAD_FRAC), mid, high: Math.min(1, mid + MEASURED_SPREAD_FRAC) };
}

/** The curve through the three suctions where all are known, else through the cup; the waters follow from it. */
function waterOf(of: {
  draft: ComponentDraft;
  relatives: Relatives;
  porosityMid: number;
  figure: (name: MeasuredName) => Ranged;
}): Water {
  const { draft, relatives, figure } = of;
  const saturatedFrac = of.porosityMid * (1 - TRAPPED_AIR_FRAC);
  const points = (Object.keys(SUCTION_CM) as WaterName[]).flatMap((name) =>
    draft[name] === undefined ? [] : [{ suctionCm: SUCTION_CM[name], waterFrac: draft[name] }],
  );
  if (points.length === 3) {
    const curve = curveThroughPoints(points, saturatedFrac);
    const cup = draft.cupCapacityFrac ?? cupCapacityFracOf(curve);
    return {
      curve,
      cupCapacityFrac: measured("cupCapacityFrac", cup),
      ...watersOf(curve, () => measuredSpread),
    };
  }
  const cup = figure("cupCapacityFrac");
  const mid = Math.min(cup.mid, saturatedFrac * 0.98);
  const curve = curveThroughCup({
    relative: relatives.nearest(mid).curve,
    saturatedFrac,
    cupCapacityFrac: mid,
  });
  const cupCapacityFrac = { low: Math.min(cup.low, mid), mid, high: Math.max(cup.high, mid) };
  return { curve, cupCapacityFrac, ...watersOf(curve, (name) => relatives.spread(name)) };
}

const measuredSpread = (mid: number) => measured("waterAt10cmFrac", mid);

function watersOf(
  curve: RetentionCurve,
  spreadFor: (name: WaterName) => (mid: number) => Ranged,
): Pick<Component, WaterName> {
  const at = (name: WaterName) => spreadFor(name)(curveWaterFrac(curve, SUCTION_CM[name]));
  return {
    waterAt10cmFrac: at("waterAt10cmFrac"),
    waterAt50cmFrac: at("waterAt50cmFrac"),
    waterAt100cmFrac: at("waterAt100cmFrac"),
  };
}

function filled(
  draft: ComponentDraft,
  figures: Water & Pick<Component, "dryDensityKgPerL" | "totalPorosityFrac">,
): Component {
  const { name, grainMm, crumbly, repellentBelowFrac } = draft;
  return {
    id: draft.id,
    ...(name === undefined ? {} : { name }),
    ...figures,
    grain: draft.grain!,
    ...(grainMm === undefined ? {} : { grainMm }),
    crumbly: crumbly ?? draft.role === "holding",
    ...(repellentBelowFrac === undefined ? {} : { repellentBelowFrac }),
    role: draft.role!,
    compost: draft.compost!,
    prepare: draft.prepare ?? [],
    nutrients: draft.nutrients ?? "none",
    caution: draft.caution ?? "dust",
    status: "own",
    told: TOLD_FIGURES.filter((figure) => draft[figure] !== undefined),
    sources: [],
  };
}
