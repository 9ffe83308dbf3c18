import { carryOf, pourTrouble, shieldTrouble } from "../season/deeds-of-morning.ts";
import type { Season } from "../season/season.ts";
import { emptyHarm } from "../season/season-result.ts";
import { harmSum, nuisanceOf } from "../world/harm-terms.ts";
import { repot } from "../world/plant-out.ts";
import { type Reckoning, runWorldHours, type WorldDeed } from "../world/run-hours.ts";
import { usableLeft } from "../world/water-hour.ts";
import type { WorldPot } from "../world/world-pot.ts";
import { copyState, type WorldState } from "../world/world-state.ts";
import { cellOf, type Fineness } from "./cell-of.ts";

/** The best that could have been done for one pot, foreseeing everything. */
export interface BestCourse {
  /** Harm and trouble. */
  readonly cost: number;
  readonly harm: number;
  readonly harmByTerm: number[];
  readonly trouble: number;
  /** States that were run through, days together: how much work it was. */
  readonly statesRun: number;
}

/** A kept state and what it came to. */
interface Kept {
  readonly state: WorldState;
  /** Whether its cover is up. */
  readonly covered: boolean;
  readonly harm: Float64Array;
  readonly trouble: number;
  readonly cost: number;
}

/** States dearer than the cheapest by this are let go. Chosen by us: dry to wet, wet to dry and place to place cost less. */
const MARGIN = 0.08;
/** Pours that are thought of: until it runs through, and parts of what is missing. */
const PARTS = [Number.POSITIVE_INFINITY, 0.6, 0.3] as const;
/** Nobody waters a pot that is this full. */
const FULL_FRAC = 0.93;

/**
 * Least harm and trouble with perfect foresight of weather and pot, the planner's own deeds at its own hour: forward
 * dynamic programming over cells of the state. Every course is run exactly, so the outcome can be reached; cells only
 * decide which courses are followed on, and finer ones can find a better course.
 */
export function bestCourse(season: Season, of: { pot: WorldPot; first: WorldState } & Fineness): BestCourse {
  const { clock, axis } = season;
  const world = { clock, pot: of.pot };
  let kept: Kept[] = [{ state: of.first, covered: false, harm: emptyHarm(), trouble: 0, cost: 0 }];
  let statesRun = 0;
  for (let day = season.fromDay; day < season.toDay; day++) {
    const fromHour = clock.roundHour[day]!;
    const toHour = clock.roundHour[day + 1]!;
    const cells = new Map<number, Kept>();
    let best = Number.POSITIVE_INFINITY;
    for (const one of kept) {
      repotIfDue(world, one.state, { hour: fromHour, date: axis.days[day]!.day });
      for (const choice of choicesAt(season, { pot: of.pot, kept: one, fromHour, toHour })) {
        const next = lived(world, one, { choice, season, fromHour, toHour });
        statesRun++;
        if (next.cost > best + MARGIN) continue;
        best = Math.min(best, next.cost);
        const cell = cellOf(of.pot, next.state, { ...of, isShielded: next.covered });
        const other = cells.get(cell);
        if (other === undefined || next.cost < other.cost) cells.set(cell, next);
      }
    }
    kept = [...cells.values()].filter(({ cost }) => cost <= best + MARGIN);
  }
  const last = kept.reduce((a, b) => (b.cost < a.cost ? b : a));
  const { cost, harm } = last;
  const trouble = last.trouble + nuisanceOf(harm);
  return { cost, harm: harmSum(harm), harmByTerm: Array.from(harm), trouble, statesRun };
}

interface Choice {
  readonly pourMl: number;
  readonly toSpot: number | null;
  /** A cover over the mix for this day. */
  readonly covers: boolean;
  readonly trouble: number;
}

/** The planner's cover over the mix. */
const COVER = { letsInFrac: 0.2, coldLeftFrac: 0.5, trips: 0.5 } as const;
/** Rain of a day from which a cover is thought of, mm. */
const WORTH_COVERING_MM = 0.5;

function choicesAt(
  { trouble, stage, clock }: Season,
  of: { pot: WorldPot; kept: Kept; fromHour: number; toHour: number },
): Choice[] {
  const { pot, kept } = of;
  const { state } = kept;
  const missing = pot.capacityMl - state.upperMl - state.lowerMl;
  const pours = [0];
  if (usableLeft(pot, state) < FULL_FRAC) {
    for (const part of PARTS) pours.push(part === Number.POSITIVE_INFINITY ? part : part * missing);
  }
  const places: { toSpot: number | null; covers: boolean; trouble: number }[] = [
    { toSpot: null, covers: false, trouble: 0 },
  ];
  let rainMm = 0;
  const { rainMm: byHour } = clock.spots[state.spot]!;
  for (let hour = of.fromHour; hour < of.toHour; hour++) rainMm += byHour[hour]!;
  if (rainMm >= WORTH_COVERING_MM) {
    const up = kept.covered ? 0 : shieldTrouble(trouble, COVER.trips);
    places.push({ toSpot: null, covers: true, trouble: up });
  }
  for (let toSpot = 0; toSpot < stage.spots.length; toSpot++) {
    if (toSpot === state.spot) continue;
    const carry = carryOf(trouble, pot, { state, toSpot });
    if (carry !== null) places.push({ toSpot, covers: false, trouble: carry.harm });
  }
  return places.flatMap((place) => pours.map((pourMl) => ({ ...place, pourMl })));
}

const reckoning: Reckoning = { harm: emptyHarm(), pouredMl: 0, drainedMl: 0 };

function lived(
  world: Parameters<typeof runWorldHours>[0],
  from: Kept,
  of: { choice: Choice; season: Season; fromHour: number; toHour: number },
): Kept {
  const { choice, season, fromHour, toHour } = of;
  const state = copyState(from.state);
  const harm = from.harm.slice();
  reckoning.harm.fill(0);
  reckoning.pouredMl = 0;
  const shield = choice.covers ? { shield: { ...COVER, untilHour: toHour } } : {};
  const deeds: WorldDeed[] = [{ hour: fromHour, pourMl: choice.pourMl, toSpot: choice.toSpot, ...shield }];
  runWorldHours(world, state, { fromHour, toHour, deeds, into: reckoning });
  for (let term = 0; term < harm.length; term++) harm[term]! += reckoning.harm[term]!;
  const pour = choice.pourMl > 0 ? pourTrouble(season.trouble, reckoning.pouredMl) : 0;
  const trouble = from.trouble + choice.trouble + pour;
  return { state, covered: choice.covers, harm, trouble, cost: harmSum(harm) + nuisanceOf(harm) + trouble };
}

function repotIfDue(
  world: Parameters<typeof repot>[0],
  state: WorldState,
  at: { hour: number; date: string },
): void {
  const { repot: plan } = world.pot.known;
  if (plan === null) return;
  if (Number(at.date.slice(5, 7)) !== plan.month || Number(at.date.slice(8)) !== plan.dayOfMonth) return;
  repot(world, state, { hour: at.hour, roots: plan.roots });
}
