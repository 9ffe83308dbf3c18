import type { Deed } from "../../core/plan/deed.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";

/** What the grower has been told today about one deed for one pot. */
export interface WatchedDeed {
  readonly told: boolean;
  /** By the morning itself; only such a deed is ever called off. */
  readonly byMorning: boolean;
  /** Looks in a row that no longer asked for it. */
  readonly misses: number;
  /** Looks in a row that asked for it. */
  readonly hits: number;
  /** Amendments in which it stood. */
  readonly amendments: number;
  /** By when, as the grower was told; null for the day itself. */
  readonly byUtcMs: number | null;
}

export interface WatchState {
  readonly forDay: string;
  /** Key: pot and action. */
  readonly deeds: Readonly<Record<string, WatchedDeed>>;
  readonly amendmentCount: number;
}

export interface WatchResult {
  readonly state: WatchState;
  /** Keys newly asked for and called off; both empty when nothing is to be told. */
  readonly added: readonly string[];
  readonly calledOff: readonly string[];
}

const HOUR_MS = 3_600_000;
const AHEAD_MS = 24 * HOUR_MS;
/** Harm avoided, as a share of a plant, from which a deed is worth a message in the day. Chosen by us. */
const ENTER_HARM = 0.03;
/** Below this it is no longer asked for; between the two nothing changes. Chosen by us. */
const LEAVE_HARM = 0.01;
/** Looks in a row before a deed is called off, or asked for again: one look may be one odd forecast. Chosen by us. */
const LOOKS_TO_TURN = 2;
/** With less time than this one look is enough. Chosen by us. */
const NO_TIME_TO_WAIT_MS = 6 * HOUR_MS;
/** A deed that was told for later is news when it must be done sooner by more than this. Chosen by us. */
const SOONER_MS = 6 * HOUR_MS;
/** A deed stands in this many amendments a day at most. Chosen by us: once called off, once asked for again. */
const MOST_AMENDMENTS = 2;

/** Deeds that nothing is lost by hearing of tomorrow. */
const QUIET = new Set<Deed["action"]>(["none", "keep-dry", "carry-out"]);

const FRESH: WatchedDeed = {
  told: false,
  byMorning: false,
  misses: 0,
  hits: 0,
  amendments: 0,
  byUtcMs: null,
};

/** The state after the morning brief: whatever it asks for has been told, for the coming days too. */
export function watchFrom(morning: Plan): WatchState {
  const asked = askedFor(morning, Number.POSITIVE_INFINITY);
  const deeds = [...asked].map(([key, { byUtcMs }]) => [
    key,
    { ...FRESH, told: true, byMorning: true, byUtcMs },
  ]);
  return { forDay: morning.forDay, deeds: Object.fromEntries(deeds), amendmentCount: 0 };
}

/**
 * One look at a fresh plan. A deed is told when its harm passes the upper line, and called off when it stays below the
 * lower one for two looks; what is called off may come back once. The last word is never the careless one: only what the
 * morning asked for is called off, and a deed that came with an amendment is left to lapse on the page.
 */
export function watch(state: WatchState, { plan, nowUtcMs }: { plan: Plan; nowUtcMs: number }): WatchResult {
  const asked = askedFor(plan, nowUtcMs + AHEAD_MS);
  const done = new Set(
    plan.changesSince.filter(({ because }) => because === "journal").map(({ potId }) => potId),
  );
  const result = {
    deeds: {} as Record<string, WatchedDeed>,
    added: [] as string[],
    calledOff: [] as string[],
  };
  for (const key of new Set([...Object.keys(state.deeds), ...asked.keys()])) {
    const before = state.deeds[key] ?? FRESH;
    const turn = turned(before, { asked: asked.get(key), isDone: done.has(potOf(key)), nowUtcMs });
    result.deeds[key] = turn.after;
    if (turn.say === "added") result.added.push(key);
    if (turn.say === "called-off") result.calledOff.push(key);
  }
  const tells = result.added.length + result.calledOff.length > 0;
  return {
    state: {
      forDay: state.forDay,
      deeds: result.deeds,
      amendmentCount: state.amendmentCount + (tells ? 1 : 0),
    },
    added: result.added.sort(),
    calledOff: result.calledOff.sort(),
  };
}

interface Asked {
  readonly harm: number;
  readonly byUtcMs: number | null;
}

interface Look {
  readonly asked: Asked | undefined;
  readonly isDone: boolean;
  readonly nowUtcMs: number;
}

function turned(before: WatchedDeed, look: Look): { after: WatchedDeed; say: "added" | "called-off" | null } {
  const seen = counted(before, look);
  const byUtcMs = look.asked?.byUtcMs ?? seen.byUtcMs;
  if (wantsTelling(seen, look)) return { after: afterTelling(seen, { told: true, byUtcMs }), say: "added" };
  if (wantsCallingOff(seen, look))
    return { after: afterTelling(seen, { told: false, byUtcMs }), say: "called-off" };
  return { after: seen, say: null };
}

function counted(before: WatchedDeed, { asked }: Look): WatchedDeed {
  const harm = asked?.harm ?? 0;
  if (harm >= ENTER_HARM) return { ...before, hits: before.hits + 1, misses: 0 };
  if (harm < LEAVE_HARM) return { ...before, hits: 0, misses: before.misses + 1 };
  return { ...before, hits: 0, misses: 0 };
}

function wantsTelling(seen: WatchedDeed, { asked, nowUtcMs }: Look): boolean {
  if (!asked || seen.hits === 0 || seen.amendments >= MOST_AMENDMENTS) return false;
  if (seen.told) return isMuchSooner(asked, seen);
  const isPressing = asked.byUtcMs !== null && asked.byUtcMs - nowUtcMs < NO_TIME_TO_WAIT_MS;
  return isPressing || seen.amendments === 0 || seen.hits >= LOOKS_TO_TURN;
}

function isMuchSooner(asked: Asked, seen: WatchedDeed): boolean {
  return asked.byUtcMs !== null && seen.byUtcMs !== null && seen.byUtcMs - asked.byUtcMs > SOONER_MS;
}

/**
 * Only what the morning asked for within the coming day; not what has been done, nor what is over: nobody waits to hear
 * about it. One amendment is kept for asking again.
 */
function wantsCallingOff(seen: WatchedDeed, { isDone, nowUtcMs }: Look): boolean {
  const isAhead = seen.byUtcMs === null || (seen.byUtcMs > nowUtcMs && seen.byUtcMs <= nowUtcMs + AHEAD_MS);
  if (!seen.told || !seen.byMorning || isDone || !isAhead) return false;
  return seen.misses >= LOOKS_TO_TURN && seen.amendments <= MOST_AMENDMENTS - 2;
}

function afterTelling(
  seen: WatchedDeed,
  { told, byUtcMs }: { told: boolean; byUtcMs: number | null },
): WatchedDeed {
  return { ...seen, told, byUtcMs, hits: 0, misses: 0, amendments: seen.amendments + 1 };
}

/** What a plan asks for until an instant, by pot and action; the first where one pot has the same action twice. */
function askedFor(plan: Plan, untilUtcMs: number): Map<string, Asked> {
  const asked = new Map<string, Asked>();
  for (const pot of plan.pots)
    for (const deed of [pot as Deed, ...pot.then]) {
      const key = keyOf(pot, deed);
      if (QUIET.has(deed.action) || asked.has(key) || startUtcMs(deed) > untilUtcMs) continue;
      asked.set(key, { harm: deed.harmAvoided, byUtcMs: deed.by === undefined ? null : Date.parse(deed.by) });
    }
  return asked;
}

function startUtcMs(deed: Deed): number {
  const start = deed.from ?? deed.by;
  return start === undefined ? 0 : Date.parse(start);
}

function keyOf(pot: PotPlan, deed: Deed): string {
  return JSON.stringify([pot.potId, deed.action]);
}

function potOf(key: string): string {
  return JSON.parse(key)[0];
}
