import type { Message } from "../store/outbox-store.ts";
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
    messages: newestByWay(messages).some(isStuck),
    backup: backup.faults.length > 0 || isCopyOld(backup.lastUtcMs, nowUtcMs),
  };
  return (Object.keys(isAmiss) as HousePart[]).filter((part) => isAmiss[part]);
}

/** What came before a message that got through is over. */
function newestByWay(messages: readonly Message[]): Message[] {
  return messages.filter(
    ({ channel }, index) => messages.findIndex((one) => one.channel === channel) === index,
  );
}

function isStuck({ state, tries }: Message): boolean {
  return state === "given-up" || (state === "waiting" && tries > 0);
}

/** Whether nights have gone by without a copy; false before the first one. */
export function isCopyOld(lastUtcMs: number | null, nowUtcMs: number): boolean {
  return lastUtcMs !== null && nowUtcMs - lastUtcMs > OLDEST_COPY_MS;
}
