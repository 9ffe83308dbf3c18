import type { PotId } from "../../pot/pot.ts";
import { instantOf } from "../../site/instant.ts";
import { heatIndexC } from "../../weather/heat-index.ts";
import { relativeHumidityFrac } from "../../weather/humidity.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { lacksRoom } from "../choice/choose-places.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Settled } from "../choice/settle-pots.ts";
import type { Deed } from "../deed.ts";
import type { Caution } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import type { PotPlan } from "../pot-plan.ts";
import { roundTo } from "./round-to.ts";

/** Age from which a forecast is called old. Chosen by us: two of the usual twice-daily model runs have been missed. */
const OLD_H = 24;
/** Heat index at which work in the heat is warned of: from "extreme caution". [NWS2014, 90 °F] */
const HOT_INDEX_C = 32.2;

interface Rows {
  readonly studies: readonly PotStudy[];
  readonly rows: readonly PotPlan[];
  readonly places: ReadonlyMap<PotId, Settled>;
}

/** What could hurt somebody today, and what makes the plan itself less sure. */
export function cautionsOf(context: PlanContext, found: Rows): Caution[] {
  return [
    ...thunder(context),
    ...heat(context),
    ...lifts(found),
    ...sap(found),
    ...noRoom(found),
    ...oldWeather(context),
    ...noEnsemble(context),
    ...officialWarnings(context),
  ];
}

/** One caution for each unbroken run of thunder hours. */
function thunder({ thunder: marked, startUtcMs }: PlanContext): Caution[] {
  const found: Caution[] = [];
  for (let hour = 0; hour < marked.length; hour++) {
    if (marked[hour] !== 1 || marked[hour - 1] === 1) continue;
    let end = hour;
    while (marked[end] === 1) end++;
    found.push({
      code: "thunder",
      potIds: [],
      from: instantOf(startUtcMs + hour * HOUR_MS),
      to: instantOf(startUtcMs + end * HOUR_MS),
      numbers: { waitMin: 30 },
    });
  }
  return found;
}

/** Working hours of today in which the middle of the cloud feels too hot to work without thought. */
function heat({ ready, days, size, startUtcMs }: PlanContext): Caution[] {
  const { ahead } = ready;
  const hot = days[0]!.workHours
    .map((hour) => ({ hour, indexC: middleIndexC(ahead, { hour, size }) }))
    .filter(({ indexC }) => indexC >= HOT_INDEX_C);
  if (hot.length === 0) return [];
  return [
    {
      code: "heat",
      potIds: [],
      from: instantOf(startUtcMs + hot[0]!.hour * HOUR_MS),
      to: instantOf(startUtcMs + (hot.at(-1)!.hour + 1) * HOUR_MS),
      numbers: { heatIndexC: roundTo(Math.max(...hot.map(({ indexC }) => indexC)), 0.1) },
    },
  ];
}

function middleIndexC(
  { tempC, dewPointC }: PlanContext["ready"]["ahead"],
  { hour, size }: { hour: number; size: number },
): number {
  let temp = 0;
  let dew = 0;
  for (let i = hour * size; i < (hour + 1) * size; i++) {
    temp += tempC[i]! / size;
    dew += dewPointC[i]! / size;
  }
  return heatIndexC(temp, Math.min(1, Math.max(0, relativeHumidityFrac({ tempC: temp, dewPointC: dew }))));
}

/** Pots to be carried that are more than one person should lift. */
function lifts({ rows }: Rows): Caution[] {
  const heavy = rows.filter((row) =>
    [row as Deed, ...row.then].some(({ lift }) => lift !== undefined && lift.hands !== "one"),
  );
  if (heavy.length === 0) return [];
  const masses = heavy.map((row) => [row as Deed, ...row.then].find(({ lift }) => lift)!.lift!.massKg);
  return [
    { code: "lift", potIds: heavy.map(({ potId }) => potId), numbers: { massKg: Math.max(...masses) } },
  ];
}

/** Pots to be handled whose sap burns or poisons. */
function sap({ studies, rows }: Rows): Caution[] {
  const isHandled = (row: PotPlan) => [row as Deed, ...row.then].some(({ action }) => HANDLED.has(action));
  const handled = new Set(rows.filter(isHandled).map(({ potId }) => potId));
  const potIds = studies
    .filter(({ now }) => now.values.sap !== "none" && handled.has(now.pot.id))
    .map(({ now }) => now.pot.id);
  return potIds.length === 0 ? [] : [{ code: "sap", potIds, numbers: {} }];
}

const HANDLED: ReadonlySet<string> = new Set([
  "carry-in",
  "carry-out",
  "look-at-roots",
  "tilt",
  "brace",
  "clear-hole",
]);

/** Pots that would go under cover if there were room. */
function noRoom({ studies, places }: Rows): Caution[] {
  const potIds = studies.map(({ now }) => now.pot.id).filter((potId) => lacksRoom(places.get(potId)!));
  return potIds.length === 0 ? [] : [{ code: "no-room", potIds, numbers: { potCount: potIds.length } }];
}

function oldWeather({ weatherAgeHours: ageHours }: PlanContext): Caution[] {
  return ageHours < OLD_H
    ? []
    : [{ code: "old-weather", potIds: [], numbers: { ageHours: Math.round(ageHours) } }];
}

function noEnsemble({ ready }: PlanContext): Caution[] {
  return ready.realMemberCount > 0 ? [] : [{ code: "no-ensemble", potIds: [], numbers: {} }];
}

/** Wherever the weather itself is dangerous, the official warning goes before any advice of ours. */
function officialWarnings(context: PlanContext): Caution[] {
  const gust = Math.max(0, ...[...context.ready.ahead.gustMPerS]);
  const dangerous = context.thunder.includes(1) || gust >= GALE_GUST_M_PER_S;
  return dangerous
    ? [{ code: "official-warnings", potIds: [], numbers: { gustMPerS: roundTo(gust, 0.1) } }]
    : [];
}

/** Gusts that break twigs: Beaufort 8 begins at 17.2 m/s. [WMO Beaufort scale, from memory] */
const GALE_GUST_M_PER_S = 17.2;
