import type { EntryBody, JournalEntry } from "../../core/journal/entry.ts";
import { settleEntries } from "../../core/journal/settle-entries.ts";
import { DEFAULT_SETTINGS } from "../../core/plan/settings.ts";
import { potsNow } from "../../core/pot/pot-now.ts";
import { HOUR_MS } from "../../core/weather/weather.ts";
import { aPot } from "../core/pot/build-collection.ts";
import { forcing, GRITTY, PEATY, sunnyEt0Mm, vessel } from "../core/pot/build-pot.ts";
import { bestCpuMs } from "./best-cpu-ms.ts";

const DAYS = 5 * 365;
const START = Date.UTC(2021, 2, 1);
const ROUNDS = 40;

/** Time to fold five years of one pot's journal and weather to now. */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const past = new Map(
    ["terrace", "shed"].map((spotId) => [spotId, fiveYears(spotId, spotId === "shed" ? 0 : 1)]),
  );
  const journal = fiveYearsOfEntries();
  const collection = {
    site: { id: "s", name: "", latDeg: 43, lonDeg: 5, elevationM: 0, zone: "UTC" },
    spots: ["terrace", "shed"].map((id) => ({ id }) as never),
    mixes: [GRITTY, PEATY],
    pots: [aPot()],
  };
  const nowUtcMs = START + DAYS * 24 * HOUR_MS;
  const bestMs = bestCpuMs({ rounds: ROUNDS, warmUps: 5 }, () => {
    potsNow({
      collection,
      journal: settleEntries(journal).entries,
      past,
      nowUtcMs,
      settings: DEFAULT_SETTINGS,
    });
  });
  return {
    name: "fold of one pot's five years",
    lines: [
      `${bestMs.toFixed(0)} ms for ${DAYS * 24} hours, ${journal.length} entries and ${DEFAULT_SETTINGS.cloudSize} particles; aim: under 50 ms`,
    ],
  };
}

function fiveYears(spotId: string, rain: number) {
  return forcing({
    spotId,
    startUtcMs: START,
    hourCount: DAYS * 24,
    et0Mm: (hour) => sunnyEt0Mm(hour) * season(hour, 0.3, 1),
    rainMm: (hour) => (hour % 167 > 163 ? 2.5 * rain : 0),
    tempC: (hour) => 12 * season(hour, 0.3, 2) - 2,
  });
}

function season(hour: number, low: number, high: number): number {
  const summer = (1 - Math.cos((2 * Math.PI * (hour / 24 + 59)) / 365.25)) / 2;
  return low + (high - low) * summer;
}

function fiveYearsOfEntries(): JournalEntry[] {
  const entries: JournalEntry[] = [];
  const note = (day: number, body: EntryBody) => {
    const atUtcMs = START + day * 24 * HOUR_MS + 6.4 * HOUR_MS;
    entries.push({ id: `e${entries.length}`, atUtcMs, recordedUtcMs: atUtcMs, potId: "rose", body });
  };
  for (let day = 0; day < DAYS; day++) {
    const inYear = day % 365;
    if (inYear === 0)
      note(day, {
        kind: "planted",
        vessel: vessel(),
        mixId: day % 730 === 0 ? "gritty" : "peaty",
        roots: "teased",
      });
    if (day % 6 === 5) note(day, { kind: "watered", given: { kind: "ran-through" } });
    if (day % 30 === 11)
      note(day, { kind: "watered", given: { kind: "poured-drained", pouredMl: 900, drainedMl: 250 } });
    if (day % 45 === 20) note(day, { kind: "weighed", massKg: 3.6 });
    if (day % 14 === 3) note(day, { kind: "checked", feel: "middling" });
    if (inYear === 230) note(day, { kind: "moved", toSpotId: "shed" });
    if (inYear === 60) note(day, { kind: "moved", toSpotId: "terrace" });
    if (inYear === 280) note(day, { kind: "leaf", state: "leafless" });
    if (inYear === 30) note(day, { kind: "pruned" });
    if (day % 21 === 8) note(day, { kind: "fed" });
  }
  return entries;
}
