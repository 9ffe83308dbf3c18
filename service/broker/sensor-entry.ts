import type { EntryBody, JournalEntry } from "../../core/journal/entry.ts";
import type { Pot } from "../../core/pot/pot.ts";

const HOUR_MS = 3_600_000;
const HEAVIEST_KG = 2000;
/**
 * Thirds of a probe's own range, from dry to freshly watered. Chosen by us: such probes are not calibrated for a mix, so
 * what they say is taken as no more than a lift of the pot in the hand.
 */
const LIGHT_BELOW_PERCENT = 33;
const HEAVY_FROM_PERCENT = 67;

/**
 * What a sensor tells as an entry of the journal, at most one an hour for each pot and kind, so that a probe that speaks
 * every minute does not fill it.
 * @param topic  ends in ".../<pot by id or name>/weight-kg" or ".../moisture-percent"
 * @param payload  a number, or JSON with a number under "value"
 * @returns null where pot, kind or number is none
 */
export function sensorEntry(
  { topic, payload }: { readonly topic: string; readonly payload: string },
  { pots, nowUtcMs }: { readonly pots: readonly Pot[]; readonly nowUtcMs: number },
): JournalEntry | null {
  const [named = "", kind = ""] = topic.split("/").slice(-2);
  const pot = pots.find(({ id, name }) => id === named || name.toLowerCase() === named.toLowerCase());
  const body = bodyOf(kind, numberIn(payload));
  if (!pot || body === null) return null;
  const hour = Math.floor(nowUtcMs / HOUR_MS);
  const id = `sensor.${kind}.${pot.id}.${hour}`;
  return { id, potId: pot.id, atUtcMs: nowUtcMs, recordedUtcMs: nowUtcMs, body };
}

function bodyOf(kind: string, value: number | null): EntryBody | null {
  if (value === null) return null;
  if (kind === "weight-kg" && value > 0 && value <= HEAVIEST_KG) return { kind: "weighed", massKg: value };
  if (kind !== "moisture-percent" || value < 0 || value > 100) return null;
  const feel = value < LIGHT_BELOW_PERCENT ? "light" : value < HEAVY_FROM_PERCENT ? "middling" : "heavy";
  return { kind: "checked", feel };
}

function numberIn(payload: string): number | null {
  const value = numberOfJson(payload.trim());
  return typeof value === "number" && Number.isFinite(value) ? value : null;
}

function numberOfJson(text: string): unknown {
  try {
    const read: unknown = JSON.parse(text);
    return typeof read === "object" && read !== null && "value" in read ? read.value : read;
  } catch {
    return null;
  }
}
