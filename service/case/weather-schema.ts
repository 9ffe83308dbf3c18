import { z } from "zod";
import type { MemberColumns, Weather } from "../../core/weather/weather.ts";
import { InstantMs } from "./instant.ts";
import type { Proof, SameType } from "./same-type.ts";

const between = (least: number, most: number) => z.array(z.number().min(least).max(most).nullable());

/** Limits catch a wrong unit (kelvin, km/h as a code, percent), not rare weather. */
const tempC = between(-95, 65);
const dewPointC = between(-110, 45);
const rainMm = between(0, 500);
const windMPerS = between(0, 130);
const radiationMjPerM2 = between(0, 6);
const share = between(0, 1);

const HoursSchema = z
  .strictObject({
    tempC: tempC.describe("Air at 2 m, °C, mean of the hour. null is unknown, never zero."),
    dewPointC: dewPointC.optional(),
    rainMm: rainMm.describe("Sum of the hour."),
    windMPerS: windMPerS.optional().describe("Mean wind at 10 m."),
    gustMPerS: windMPerS.optional().describe("Strongest gust of the hour at 10 m."),
    radiationMjPerM2: radiationMjPerM2.optional().describe("Global shortwave, sum of the hour."),
    cloudFrac: share.optional(),
    weatherCode: between(0, 99).optional().describe("WMO code table 4677."),
    feedEt0Mm: between(-1, 5).optional(),
    feedRainChanceFrac: share.optional(),
  })
  .describe("Columns of equal length; index i is the hour that ends at start + (i + 1) h.");

const MembersSchema = z
  .strictObject({
    tempC: z.array(tempC).min(1),
    dewPointC: z.array(dewPointC).optional(),
    rainMm: z.array(rainMm),
    windMPerS: z.array(windMPerS).optional(),
    radiationMjPerM2: z.array(radiationMjPerM2).optional(),
  })
  .describe("One column a member, each as long as the columns of `hours`.");

export const WeatherSchema = z
  .strictObject({
    start: InstantMs.describe("A whole hour, where the first hour begins."),
    fetchedAt: InstantMs,
    source: z.enum(["primary", "fallback", "demo", "case"]).optional().describe('"case" when left out.'),
    credit: z.string().max(500).optional(),
    coarseFrom: InstantMs.optional().describe("From here on the feed told steps of several hours."),
    hours: HoursSchema,
    members: MembersSchema.nullable().optional(),
  })
  .transform(weatherFrom);

export type WeatherIsCore = Proof<SameType<z.output<typeof WeatherSchema>, Weather>>;

type Column = readonly (number | null)[];

interface Written {
  start: number;
  fetchedAt: number;
  source?: Weather["origin"]["source"] | undefined;
  credit?: string | undefined;
  coarseFrom?: number | undefined;
  hours: z.output<typeof HoursSchema>;
  members?: z.output<typeof MembersSchema> | null | undefined;
}

function weatherFrom(written: Written) {
  const { hours, members } = written;
  const hourCount = hours.tempC.length;
  const full = (given: Column | undefined) => hourColumn(given, hourCount);
  return {
    startUtcMs: written.start,
    hourCount,
    hours: {
      tempC: full(hours.tempC),
      dewPointC: full(hours.dewPointC),
      rainMm: full(hours.rainMm),
      windMPerS: full(hours.windMPerS),
      gustMPerS: full(hours.gustMPerS),
      radiationMjPerM2: full(hours.radiationMjPerM2),
      cloudFrac: full(hours.cloudFrac),
      weatherCode: full(hours.weatherCode),
      feedEt0Mm: full(hours.feedEt0Mm),
      feedRainChanceFrac: full(hours.feedRainChanceFrac),
    },
    members: members ? memberColumns(members, hourCount) : null,
    origin: {
      source: written.source ?? ("case" as const),
      fetchedUtcMs: written.fetchedAt,
      credit: written.credit ?? "",
      ...(written.coarseFrom === undefined ? {} : { coarseFromUtcMs: written.coarseFrom }),
    },
  };
}

function memberColumns(members: z.output<typeof MembersSchema>, hourCount: number): MemberColumns {
  const size = { hourCount, memberCount: members.tempC.length };
  return {
    memberCount: size.memberCount,
    tempC: memberColumn(members.tempC, size),
    dewPointC: memberColumn(members.dewPointC, size),
    rainMm: memberColumn(members.rainMm, size),
    windMPerS: memberColumn(members.windMPerS, size),
    radiationMjPerM2: memberColumn(members.radiationMjPerM2, size),
  };
}

/** A column that is absent or too short holds NaN where nothing is known. */
function hourColumn(given: Column | undefined, hourCount: number): Float64Array {
  return Float64Array.from({ length: hourCount }, (_, hour) => given?.[hour] ?? Number.NaN);
}

/** Hour-major, members innermost. */
function memberColumn(
  given: readonly Column[] | undefined,
  size: { hourCount: number; memberCount: number },
): Float64Array {
  const { hourCount, memberCount } = size;
  const out = new Float64Array(hourCount * memberCount).fill(Number.NaN);
  for (let member = 0; member < memberCount; member++) {
    const one = given?.[member];
    for (let hour = 0; hour < hourCount; hour++) {
      out[hour * memberCount + member] = one?.[hour] ?? Number.NaN;
    }
  }
  return out;
}
