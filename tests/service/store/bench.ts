import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Mix } from "../../../core/mix/mix.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import type { Site } from "../../../core/site/site.ts";
import type { Spot } from "../../../core/site/spot.ts";
import type { Store } from "../../../service/store/open-store.ts";

export function site(over: Partial<Site> = {}): Site {
  return {
    id: "yard",
    name: "Yard",
    latDeg: 48.5,
    lonDeg: 9.25,
    elevationM: 340,
    zone: "Europe/Berlin",
    ...over,
  };
}

export function spot(over: Partial<Spot> = {}): Spot {
  const open = { skyFrac: 1, sunFrac: 1, windFrac: 1, rainFrac: 1, nightWarmthC: 0, walkOrder: 1 };
  return { id: "steps", name: "Steps", kind: "open", ...open, ...over };
}

export function mix(over: Partial<Mix> = {}): Mix {
  const parts = [
    { component: "pumice", parts: 2 },
    { component: "coco-peat", parts: 1 },
  ];
  return { id: "plain", name: "Plain", recipe: { kind: "parts", parts }, ...over };
}

export function pot(over: Partial<Pot> = {}): Pot {
  return {
    id: "p1",
    name: "Lemon",
    groupId: "citrus",
    canopyWidthCm: 40,
    plantHeightCm: 60,
    firstSpotId: "steps",
    ...over,
  };
}

const VESSEL: Vessel = { shape: "round", topCm: 26, baseCm: 20, heightCm: 24, material: "unglazed" };

export function planted(over: Partial<JournalEntry> = {}): JournalEntry {
  return {
    id: "e-planted",
    atUtcMs: Date.parse("2031-04-01T10:00Z"),
    recordedUtcMs: Date.parse("2031-04-01T10:05Z"),
    potId: "p1",
    body: { kind: "planted", vessel: VESSEL, mixId: "plain", roots: "teased" },
    ...over,
  };
}

export function note(id: string, text = "looked in"): JournalEntry {
  const atUtcMs = Date.parse("2031-05-01T08:00Z");
  return { id, atUtcMs, recordedUtcMs: atUtcMs, body: { kind: "note", text } };
}

/** One site with a spot, a mix, a pot and its planting. */
export async function fill(store: Store, at: Site = site()): Promise<void> {
  await store.sites.put(at);
  await store.spots.put(at.id, spot());
  await store.mixes.put(at.id, mix());
  await store.pots.put(at.id, pot());
  await store.journal.append(at.id, [planted()]);
}
