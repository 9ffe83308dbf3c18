const DAY_MS = 86_400_000;

interface ZoneClock {
  readonly format: Intl.DateTimeFormat;
  /** UTC day number -> offset that holds all that day, or NaN where the clocks change in it. */
  readonly byDay: Map<number, number>;
}

// Kept because making a formatter costs far more than asking it; what it answers never changes.
const clocks = new Map<string, ZoneClock>();

/**
 * Local clock less UTC at an instant, milliseconds.
 * @throws RangeError when the zone is not an IANA name or the instant is not finite
 */
export function zoneOffsetMs(utcMs: number, zone: string): number {
  if (!Number.isFinite(utcMs)) throw new RangeError(`instant ${utcMs} is not finite`);
  const clock = clockOf(zone);
  const dayNumber = Math.floor(utcMs / DAY_MS);
  let offset = clock.byDay.get(dayNumber);
  if (offset === undefined) {
    const first = readOffset(clock.format, dayNumber * DAY_MS);
    offset = first === readOffset(clock.format, (dayNumber + 1) * DAY_MS) ? first : Number.NaN;
    clock.byDay.set(dayNumber, offset);
  }
  return Number.isNaN(offset) ? readOffset(clock.format, utcMs) : offset;
}

function clockOf(zone: string): ZoneClock {
  let clock = clocks.get(zone);
  if (!clock) {
    clock = { format: formatFor(zone), byDay: new Map() };
    clocks.set(zone, clock);
  }
  return clock;
}

function formatFor(zone: string): Intl.DateTimeFormat {
  return new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  });
}

function readOffset(format: Intl.DateTimeFormat, utcMs: number): number {
  const found: Record<string, number> = {};
  for (const part of format.formatToParts(utcMs)) found[part.type] = Number(part.value);
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = found;
  return Date.UTC(year, month - 1, day, hour, minute, second) - Math.floor(utcMs / 1000) * 1000;
}
