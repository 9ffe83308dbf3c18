import { clockworkFaults, expectedDays } from "./clockwork-faults.ts";
import { printLines, printTable } from "./print.ts";
import { liveThrough, type SimulatedTime } from "./simulated-time.ts";

/** A leap year, minute by minute: two hemispheres, a half-hour zone, a zone whose clocks change at midnight. */
const YEAR: SimulatedTime = {
  fromUtcMs: Date.parse("2027-12-31T12:00Z"),
  toUtcMs: Date.parse("2029-01-01T12:00Z"),
  beatMs: 60_000,
  zones: ["Europe/Berlin", "Australia/Adelaide", "America/Santiago", "Asia/Kolkata"],
  restarts: 50,
  longestDownMs: 9 * 3_600_000,
  feedDown: { fromUtcMs: Date.parse("2028-06-03T01:00Z"), toUtcMs: Date.parse("2028-06-10T01:00Z") },
  deliveryFailsFrac: 0.1,
  briefAtHour: 5.5,
  seed: Number(process.argv[2] ?? 7),
};
const DAY_MS = 86_400_000;
const YEAR_DAYS = (YEAR.toUtcMs - YEAR.fromUtcMs) / DAY_MS;

/** The first days of the year alone, with as many restarts for their length and the feed down in their midst. */
function firstDays(days: number): SimulatedTime {
  if (days >= YEAR_DAYS) return YEAR;
  const { fromUtcMs } = YEAR;
  const feedDown = {
    fromUtcMs: fromUtcMs + (days / 2) * DAY_MS,
    toUtcMs: fromUtcMs + (days / 2 + Math.min(7, days / 4)) * DAY_MS,
  };
  const restarts = Math.max(2, Math.round((YEAR.restarts * days) / YEAR_DAYS));
  return { ...YEAR, toUtcMs: fromUtcMs + days * DAY_MS, restarts, feedDown };
}

/* node --import ./service/runtime.mjs tests/drills/clockwork.ts [seed] [days] */
const life = firstDays(Number(process.argv[3] ?? YEAR_DAYS));

const startedMs = performance.now();
const run = await liveThrough(life);
const faults = clockworkFaults(life, run);
const rows = life.zones.map((zone) => {
  const mornings = run.mornings.filter((one) => one.zone === zone && one.day.startsWith("2028"));
  return {
    zone,
    "days of 2028": [...expectedDays(life, zone).keys()].filter((day) => day.startsWith("2028")).length,
    mornings: mornings.length,
    "marked late": mornings.filter(({ late }) => late).length,
    delivered: run.delivered.filter((one) => one.zone === zone).length,
    "oldest weather, hours": Math.round(Math.max(...mornings.map(({ weatherAgeHours }) => weatherAgeHours))),
  };
});
const { beats, pullsAsked, pullsRefused, brokenJobs, downs } = run;
const summary = {
  beats,
  restarts: downs.length,
  pullsAsked,
  pullsRefused,
  brokenJobs,
  faults: faults.length,
};
printTable(rows);
printTable([summary]);
printLines([...faults, `${Math.round((performance.now() - startedMs) / 1000)} s`]);
process.exitCode = faults.length === 0 && brokenJobs === 0 ? 0 : 1;
