import type { EntryBody, JournalEntry, WaterGiven } from "../core/journal/entry.ts";
import type { PotId } from "../core/pot/pot.ts";
import { calendarDay, utcMsOfLocal } from "../core/site/local-days.ts";
import { HOUR_MS } from "../core/weather/weather.ts";
import { HARBOUR_POTS } from "./harbour-pots.ts";
import { HARBOUR_SITE } from "./harbour-site.ts";

/** One line of the diary: day relative to today (always past), local hour, pot, what was done. */
interface Line {
  readonly day: number;
  readonly hour: number;
  readonly potId?: PotId;
  readonly body: EntryBody;
  /** Readings only: hours since the instrument was last set back. */
  readonly sinceHours?: number;
}

const RAN_THROUGH: WaterGiven = { kind: "ran-through" };
const FIRST_DAY = -40;

/** The waterings of pots that keep to a rhythm: every so many days, the last one so many days ago. */
const ROUNDS: readonly { potId: PotId; everyDays: number; lastDay: number; given?: WaterGiven }[] = [
  { potId: "lemon", everyDays: 3, lastDay: -1 },
  { potId: "bitter-orange", everyDays: 3, lastDay: -3 },
  { potId: "olive", everyDays: 6, lastDay: -3 },
  { potId: "bougainvillea", everyDays: 2, lastDay: -2 },
  { potId: "geraniums", everyDays: 2, lastDay: -1, given: { kind: "measured", waterMl: 450 } },
  { potId: "rose-geranium", everyDays: 3, lastDay: -1 },
  { potId: "hibiscus", everyDays: 2, lastDay: -1 },
  { potId: "agave", everyDays: 16, lastDay: -6 },
  { potId: "frangipani-tall", everyDays: 9, lastDay: -8 },
  { potId: "desert-rose-old", everyDays: 7, lastDay: -7 },
  { potId: "milk-spurge", everyDays: 9, lastDay: -3 },
  { potId: "barrel", everyDays: 18, lastDay: -4 },
  { potId: "columns", everyDays: 15, lastDay: -9 },
  { potId: "tree-aloe", everyDays: 12, lastDay: -4 },
  { potId: "island-palm", everyDays: 14, lastDay: -4 },
  { potId: "winter-aloe", everyDays: 14, lastDay: -3 },
  { potId: "melon-cactus", everyDays: 12, lastDay: -3 },
  { potId: "quay-fig", everyDays: 1, lastDay: -1 },
  { potId: "kumquat", everyDays: 5, lastDay: -2 },
  { potId: "frangipani-white", everyDays: 8, lastDay: -2, given: { kind: "measured", waterMl: 900 } },
  { potId: "leaf-cactus", everyDays: 7, lastDay: -2 },
  { potId: "sill-fig", everyDays: 3, lastDay: -1 },
];

const DIARY: readonly Line[] = [
  { day: -33, hour: 9, potId: "frangipani-white", body: { kind: "moved", toSpotId: "net-loft" } },
  { day: -30, hour: 8, potId: "tree-aloe", body: { kind: "leaf", state: "in-leaf" } },
  { day: -26, hour: 8, body: { kind: "rain-gauge", rainMm: 7, sinceUtcMs: 0 }, sinceHours: 32 },
  { day: -21, hour: 8, potId: "desert-rose-old", body: { kind: "leaf", state: "in-leaf" } },
  { day: -21, hour: 8, potId: "frangipani-tall", body: { kind: "leaf", state: "in-leaf" } },
  { day: -18, hour: 8, body: { kind: "rain-gauge", rainMm: 12, sinceUtcMs: 0 }, sinceHours: 32 },
  { day: -14, hour: 7, potId: "lemon", body: { kind: "fed" } },
  {
    day: -14,
    hour: 8,
    potId: "lemon",
    body: { kind: "watered", given: { kind: "poured-drained", pouredMl: 9000, drainedMl: 2100 } },
  },
  { day: -12, hour: 18, potId: "kumquat", body: { kind: "moved", toSpotId: "net-loft" } },
  {
    day: -12,
    hour: 18,
    potId: "kumquat",
    body: { kind: "note", text: "Leaves torn by wind; into the loft to recover." },
  },
  { day: -10, hour: 7, potId: "quay-fig", body: { kind: "weighed", massKg: 9.4 } },
  { day: -7, hour: 7, potId: "frangipani-white", body: { kind: "leaf", state: "new-growth" } },
  {
    day: -6,
    hour: 10,
    potId: "jade-cuttings",
    body: { kind: "note", text: "Cut ends had ten days in the air." },
  },
  { day: -3, hour: 17, potId: "melon-cactus", body: { kind: "checked", feel: "middling" } },
  { day: -2, hour: 7, potId: "kumquat", body: { kind: "leaf", state: "new-growth" } },
  { day: -1, hour: 18, potId: "bitter-orange", body: { kind: "checked", dryToCm: 12, feel: "light" } },
  { day: -1, hour: 18, body: { kind: "thermometer", minC: 21.3, maxC: 34.6, sinceUtcMs: 0 }, sinceHours: 24 },
];

/** The diary of the roof, laid out relative to today. */
export function demoJournal(nowUtcMs: number): JournalEntry[] {
  return [...plantings(), ...rounds(), ...DIARY]
    .sort((a, b) => a.day - b.day || a.hour - b.hour)
    .map((line, index) => entryOf(line, { index, nowUtcMs }));
}

function plantings(): Line[] {
  return HARBOUR_POTS.map(({ pot, vessel, mixId, plantedDay, roots }) => ({
    day: plantedDay,
    hour: 10,
    potId: pot.id,
    body: { kind: "planted", vessel, mixId, roots, mixWet: roots === "undisturbed" ? "moist" : "dry" },
  }));
}

function rounds(): Line[] {
  return ROUNDS.flatMap(({ potId, everyDays, lastDay, given = RAN_THROUGH }) => {
    const plantedDay = HARBOUR_POTS.find(({ pot }) => pot.id === potId)!.plantedDay;
    // The first drink after a planting with cut roots waits for them to close.
    const earliest = Math.max(FIRST_DAY, plantedDay + 12);
    const count = 1 + Math.floor((lastDay - earliest) / everyDays);
    return Array.from({ length: count }, (_, k) => ({
      day: lastDay - k * everyDays,
      hour: 7,
      potId,
      body: { kind: "watered", given } as const,
    }));
  });
}

function entryOf(
  { day, hour, potId, body, sinceHours = 0 }: Line,
  at: { index: number; nowUtcMs: number },
): JournalEntry {
  const atUtcMs = utcMsOfDay(at.nowUtcMs, { day, hour });
  const dated = "sinceUtcMs" in body ? { ...body, sinceUtcMs: atUtcMs - sinceHours * HOUR_MS } : body;
  const id = `harbour-${String(at.index + 1).padStart(3, "0")}`;
  return { id, atUtcMs, recordedUtcMs: atUtcMs, ...(potId === undefined ? {} : { potId }), body: dated };
}

function utcMsOfDay(nowUtcMs: number, { day, hour }: { day: number; hour: number }): number {
  const { zone } = HARBOUR_SITE;
  return utcMsOfLocal(calendarDay(nowUtcMs + day * 24 * HOUR_MS, zone), hour, zone);
}
