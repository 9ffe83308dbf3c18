import { deflateRawSync, inflateRawSync } from "node:zlib";
import type { HourColumns, MemberColumns, Weather } from "../../core/weather/weather.ts";

const HOUR_NAMES = [
  "tempC",
  "dewPointC",
  "rainMm",
  "windMPerS",
  "gustMPerS",
  "radiationMjPerM2",
  "cloudFrac",
  "weatherCode",
  "feedEt0Mm",
  "feedRainChanceFrac",
] as const satisfies readonly (keyof HourColumns)[];

const MEMBER_NAMES = ["tempC", "dewPointC", "rainMm", "windMPerS", "radiationMjPerM2"] as const;

/** What stands beside the packed columns in the row. */
export interface PackedWeather {
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly memberCount: number;
  readonly origin: Weather["origin"];
  readonly body: Uint8Array;
}

/**
 * Every number of a Weather, bit for bit, small: feeds print few decimals, so the same eight bytes come again and again.
 * Laying the bytes out by their place in the number first made it twice as large.
 */
export function packWeather(weather: Weather): PackedWeather {
  const columns = columnsOf(weather);
  return {
    startUtcMs: weather.startUtcMs,
    hourCount: weather.hourCount,
    memberCount: weather.members?.memberCount ?? 0,
    origin: weather.origin,
    body: deflateRawSync(joined(columns)),
  };
}

/** @throws RangeError when the body does not hold as many numbers as the row says */
export function unpackWeather(packed: PackedWeather): Weather {
  const { hourCount, memberCount } = packed;
  const numbers = numbersOf(inflateRawSync(packed.body));
  const needed = hourCount * (HOUR_NAMES.length + memberCount * MEMBER_NAMES.length);
  if (numbers.length !== needed)
    throw new RangeError(`packed weather holds ${numbers.length} numbers, ${needed} were expected`);
  const memberSize = hourCount * memberCount;
  const membersFrom = hourCount * HOUR_NAMES.length;
  return {
    startUtcMs: packed.startUtcMs,
    hourCount,
    hours: named(HOUR_NAMES, (index) => numbers.slice(index * hourCount, (index + 1) * hourCount)),
    members:
      memberCount === 0
        ? null
        : {
            memberCount,
            ...named(MEMBER_NAMES, (index) =>
              numbers.slice(membersFrom + index * memberSize, membersFrom + (index + 1) * memberSize),
            ),
          },
    origin: packed.origin,
  };
}

function columnsOf({ hours, members }: Weather): Float64Array[] {
  return [
    ...HOUR_NAMES.map((name) => hours[name]),
    ...(members ? MEMBER_NAMES.map((name) => members[name as keyof MemberColumns] as Float64Array) : []),
  ];
}

function joined(columns: readonly Float64Array[]): Uint8Array {
  const all = new Float64Array(columns.reduce((sum, column) => sum + column.length, 0));
  let at = 0;
  for (const column of columns) {
    all.set(column, at);
    at += column.length;
  }
  return new Uint8Array(all.buffer);
}

function numbersOf(bytes: Uint8Array): Float64Array {
  // Copied: numbers must begin at a multiple of eight bytes, and a buffer from the inflater need not.
  return new Float64Array(new Uint8Array(bytes).buffer);
}

function named<Name extends string>(
  names: readonly Name[],
  column: (index: number) => Float64Array,
): Record<Name, Float64Array> {
  return Object.fromEntries(names.map((name, index) => [name, column(index)])) as Record<Name, Float64Array>;
}
