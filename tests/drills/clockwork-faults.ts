import { DateTime } from "luxon";
import type { SimulatedRun, SimulatedTime } from "./simulated-time.ts";

const MINUTE_MS = 60_000;

/**
 * What went wrong in a simulated time, in lines; none when every local day of every zone has its one brief at its hour.
 * The days and their hours come from luxon, a general reference library that the service does not use for this.
 */
export function clockworkFaults(life: SimulatedTime, run: SimulatedRun): string[] {
  return life.zones.flatMap((zone) => {
    const days = expectedDays(life, zone);
    return [...days]
      .flatMap(([day, dueUtcMs]) => dayFaults({ life, run, zone, day, dueUtcMs }))
      .concat(strangers(run, zone, days));
  });
}

/** Local days whose brief hour lies in the simulated time, with room to come late. */
export function expectedDays(life: SimulatedTime, zone: string): Map<string, number> {
  const days = new Map<string, number>();
  let day = DateTime.fromMillis(life.fromUtcMs, { zone }).startOf("day");
  for (; day.toMillis() < life.toUtcMs; day = day.plus({ days: 1 })) {
    const hour = Math.floor(life.briefAtHour);
    const due = day.set({ hour, minute: Math.round((life.briefAtHour - hour) * 60) }).toMillis();
    if (due >= life.fromUtcMs && due + life.longestDownMs < life.toUtcMs) days.set(day.toISODate()!, due);
  }
  return days;
}

function dayFaults(input: {
  life: SimulatedTime;
  run: SimulatedRun;
  zone: string;
  day: string;
  dueUtcMs: number;
}): string[] {
  const { life, run, zone, day, dueUtcMs } = input;
  const made = run.mornings.filter((one) => one.zone === zone && one.day === day);
  if (made.length !== 1) return [`${zone} ${day}: ${made.length} mornings`];
  const { madeUtcMs, late } = made[0]!;
  const faults: string[] = [];
  // A down that began in the beat after the hour may have swallowed it.
  const down = run.downs.find(
    ({ fromUtcMs, toUtcMs }) => fromUtcMs <= dueUtcMs + life.beatMs && toUtcMs > dueUtcMs,
  );
  const latestUtcMs = (down?.toUtcMs ?? dueUtcMs) + life.beatMs;
  if (madeUtcMs < dueUtcMs)
    faults.push(`${zone} ${day}: ${(dueUtcMs - madeUtcMs) / MINUTE_MS} minutes early`);
  if (madeUtcMs > latestUtcMs)
    faults.push(`${zone} ${day}: ${(madeUtcMs - latestUtcMs) / MINUTE_MS} minutes late`);
  if (late !== madeUtcMs - dueUtcMs > 15 * MINUTE_MS) faults.push(`${zone} ${day}: late is marked ${late}`);
  const sent = run.delivered.filter((one) => one.zone === zone && one.createdUtcMs === madeUtcMs);
  if (sent.length !== 1) faults.push(`${zone} ${day}: delivered ${sent.length} times`);
  return faults;
}

/** Mornings of days that are none of the expected, apart from the cut days at both ends. */
function strangers(run: SimulatedRun, zone: string, days: ReadonlyMap<string, number>): string[] {
  const sorted = [...days.keys()].sort();
  const [first, last] = [sorted[0]!, sorted.at(-1)!];
  return run.mornings
    .filter((one) => one.zone === zone && one.day >= first && one.day <= last && !days.has(one.day))
    .map(({ day }) => `${zone} ${day}: a morning on a day that is none`);
}
