import type { HouseStatus } from "./house-status.ts";

export type HousePart = "weather" | "morning" | "messages" | "backup";

/** A night without a copy is tried again by the hour; a second one is worth a look. Chosen by us. */
const OLDEST_COPY_MS = 50 * 3_600_000;

/** The parts of the house that are worth a look of the grower; none when all is in order. */
export function houseTroubles(status: HouseStatus, nowUtcMs: number): HousePart[] {
  const { weather, morning, messages, backup } = status;
  const isAmiss: Record<HousePart, boolean> = {
    weather: weather.failuresInRow > 0,
    morning: morning.isOverdue,
    messages: messages.some(({ state, tries }) => state === "given-up" || (state === "waiting" && tries > 0)),
    backup: backup.faults.length > 0 || isCopyOld(backup.lastUtcMs, nowUtcMs),
  };
  return (Object.keys(isAmiss) as HousePart[]).filter((part) => isAmiss[part]);
}

/** Whether nights have gone by without a copy; false before the first one. */
export function isCopyOld(lastUtcMs: number | null, nowUtcMs: number): boolean {
  return lastUtcMs !== null && nowUtcMs - lastUtcMs > OLDEST_COPY_MS;
}
