import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import { settleEntries } from "../../../core/journal/settle-entries.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import { DEFAULT_SETTINGS } from "../../../core/plan/settings.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import { potsNow } from "../../../core/pot/pot-now.ts";
import type { SpotForcing } from "../../../core/site/forcing.ts";
import type { Spot } from "../../../core/site/spot.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { forcing, GRITTY, PEATY, vessel } from "./build-pot.ts";

export const START = Date.UTC(2026, 5, 1);

export const PLANTED: EntryBody = {
  kind: "planted",
  vessel: vessel(),
  mixId: "gritty",
  roots: "undisturbed",
  mixWet: "watered-in",
};

export function aPot(changes: Partial<Pot> = {}): Pot {
  return {
    id: "rose",
    name: "Rose",
    groupId: "desert-rose",
    canopyWidthCm: 22,
    plantHeightCm: 30,
    firstSpotId: "terrace",
    ...changes,
  };
}

const spot = (id: string): Spot => ({
  id,
  name: id,
  kind: "open",
  skyFrac: 1,
  sunFrac: 1,
  windFrac: 1,
  rainFrac: 1,
  nightWarmthC: 0,
  walkOrder: 1,
});

export function collection(pots: readonly Pot[] = [aPot()]): Collection {
  return {
    site: { id: "s", name: "", latDeg: 43, lonDeg: 5, elevationM: 10, zone: "UTC" },
    spots: [spot("terrace"), spot("shed")],
    mixes: [GRITTY, PEATY],
    pots,
  };
}

/** Entries at hours after START, written down as they happened. */
export function journal(
  rows: readonly (readonly [hour: number, body: EntryBody, changes?: Partial<JournalEntry>])[],
) {
  return rows.map(([hour, body, changes], i): JournalEntry => {
    const atUtcMs = START + hour * HOUR_MS;
    return { id: `e${i}`, atUtcMs, recordedUtcMs: atUtcMs + i, potId: "rose", body, ...changes };
  });
}

/** Sun on the terrace, a dim dry shed. */
export function pastWeather(
  hourCount: number,
  rainMm: (hour: number) => number = () => 0,
): Map<string, SpotForcing> {
  const terrace = forcing({ hourCount, startUtcMs: START, rainMm });
  const shed = forcing({ hourCount, startUtcMs: START, spotId: "shed", et0Mm: () => 0.02 });
  return new Map([
    ["terrace", terrace],
    ["shed", shed],
  ]);
}

/** The first pot after some hours. */
export function potAfter(of: {
  hours: number;
  entries: readonly JournalEntry[];
  pots?: readonly Pot[];
  past?: Map<string, SpotForcing>;
  rainMm?: (hour: number) => number;
}) {
  const { entries, notes } = settleEntries(of.entries);
  const { pots, problems } = potsNow({
    collection: collection(of.pots),
    journal: entries,
    past: of.past ?? pastWeather(of.hours, of.rainMm),
    nowUtcMs: START + of.hours * HOUR_MS,
    settings: DEFAULT_SETTINGS,
  });
  return { pots, problems: [...notes, ...problems] };
}

/** Mean content of the first pot as a share of capacity. */
export function meanFrac(of: Parameters<typeof potAfter>[0]): number {
  const [now] = potAfter(of).pots;
  const { waterMl, capacityFactor, weightFrac } = now!.cloud;
  const { capacityMl } = now!.inVessel.hold;
  return waterMl.reduce((sum, ml, k) => sum + (weightFrac[k]! * ml) / (capacityMl * capacityFactor[k]!), 0);
}
