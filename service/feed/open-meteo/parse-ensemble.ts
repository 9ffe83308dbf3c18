import type { Outcome } from "../../../core/problem.ts";
import type { MemberColumns } from "../../../core/weather/weather.ts";
import { feedProblem } from "../feed-problem.ts";
import { type HourAxis, hourAxis, onAxis } from "../hour-axis.ts";
import { meanOfEnds, stampedAtEnd } from "../hours-from-stamps.ts";
import type { HourlyAnswer } from "./answer-schema.ts";
import { readColumn } from "./read-column.ts";
import { rowInstants } from "./stamps.ts";
import { MEMBER_VARIABLES, type Variable } from "./variables.ts";

/** The forecast's axis, onto which the members are laid. */
export interface WantedHours {
  readonly startUtcMs: number;
  readonly hourCount: number;
}

const HOUR_MS = 3_600_000;
type MemberQuantity = keyof typeof MEMBER_VARIABLES;
/** Instants are averaged from both ends; rain and radiation belong to the hour they are stamped at the end of. */
const TO_HOURS: Readonly<Record<MemberQuantity, (byStamp: Float64Array) => Float64Array>> = {
  tempC: meanOfEnds,
  dewPointC: meanOfEnds,
  rainMm: stampedAtEnd,
  windMPerS: meanOfEnds,
  radiationMjPerM2: stampedAtEnd,
};

/** An ensemble answer as member columns on the wanted axis; hours that it does not reach hold NaN. */
export function parseEnsemble(answer: HourlyAnswer, want: WantedHours): Outcome<MemberColumns> {
  const axis = hourAxis(rowInstants(answer));
  if (axis === null) {
    return { ok: false, problems: [feedProblem("feed-no-hours", { feed: "ensemble" }, ["hourly", "time"])] };
  }
  const series = memberSeries(Object.keys(answer.hourly));
  if (series.members.length === 0) {
    return { ok: false, problems: [feedProblem("feed-no-members", { feed: "ensemble" }, ["hourly"])] };
  }
  const columnOf = (quantity: MemberQuantity) => laidOut(answer, { axis, series, want, quantity });
  const columns = {
    memberCount: series.members.length,
    tempC: columnOf("tempC"),
    dewPointC: columnOf("dewPointC"),
    rainMm: columnOf("rainMm"),
    windMPerS: columnOf("windMPerS"),
    radiationMjPerM2: columnOf("radiationMjPerM2"),
  };
  if (columns.tempC.every(Number.isNaN)) {
    return { ok: false, problems: [feedProblem("feed-no-temperature", { feed: "ensemble" }, ["hourly"])] };
  }
  return { ok: true, value: columns };
}

interface MemberSeries {
  /** What stands between variable and model in a key: "" for the first series, then "_member01" and on. */
  readonly members: readonly string[];
  /** Model name as it came back, with its underscore, or "". */
  readonly suffix: string;
}

/**
 * The series of one model among the keys. The model's name may stand at the end of every key or of none, and may
 * differ from the name that was asked; when several answered, the one without a suffix or with most series is read.
 */
function memberSeries(keys: readonly string[]): MemberSeries {
  const bySuffix = new Map<string, string[]>();
  for (const key of keys) {
    const match = /^temperature_2m(_member\d{2,})?(_.+)?$/.exec(key);
    if (match === null) continue;
    const suffix = match[2] ?? "";
    bySuffix.set(suffix, [...(bySuffix.get(suffix) ?? []), match[1] ?? ""]);
  }
  const bare = bySuffix.get("");
  const [suffix, members] =
    bare === undefined
      ? ([...bySuffix].sort((a, b) => b[1].length - a[1].length)[0] ?? ["", []])
      : ["", bare];
  return { suffix, members: [...members].sort(byMemberNumber) };
}

function byMemberNumber(a: string, b: string): number {
  return Number(a.slice("_member".length)) - Number(b.slice("_member".length));
}

function laidOut(
  answer: HourlyAnswer,
  from: { axis: HourAxis; series: MemberSeries; want: WantedHours; quantity: MemberQuantity },
): Float64Array {
  const { axis, series, want, quantity } = from;
  const variable: Variable = MEMBER_VARIABLES[quantity];
  const memberCount = series.members.length;
  const out = new Float64Array(want.hourCount * memberCount).fill(Number.NaN);
  const shift = (axis.firstUtcMs - want.startUtcMs) / HOUR_MS;
  series.members.forEach((member, m) => {
    const key = variable.name + member + series.suffix;
    const { byRow } = readColumn(answer, { key, quantity: variable.quantity, feed: "ensemble" });
    const byHour = TO_HOURS[quantity](onAxis(axis, byRow));
    const first = Math.max(0, -shift);
    const end = Math.min(byHour.length, want.hourCount - shift);
    for (let hour = first; hour < end; hour += 1) out[(hour + shift) * memberCount + m] = byHour[hour]!;
  });
  return out;
}
