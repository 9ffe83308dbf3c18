import * as z from "zod";

/**
 * The parts of an answer that are used; all else passes through. Columns stay `unknown` here and are checked value
 * by value where they are read, once.
 */
export const HourlyAnswer = z.object({
  utc_offset_seconds: z.number().int().min(-86_400).max(86_400).default(0),
  hourly_units: z.record(z.string(), z.string()).default({}),
  hourly: z.looseObject({ time: z.union([z.array(z.string()), z.array(z.number())]) }),
});
export type HourlyAnswer = z.infer<typeof HourlyAnswer>;

export const ErrorAnswer = z.object({ error: z.literal(true), reason: z.string().optional() });

/** Zero values are dropped on the way, so a place on the equator or the prime meridian lacks that coordinate. */
export const PlacesAnswer = z.object({
  results: z
    .array(
      z.object({
        id: z.number(),
        name: z.string(),
        latitude: z.number().min(-90).max(90).default(0),
        longitude: z.number().min(-180).max(180).default(0),
        elevation: z.number().optional(),
        timezone: z.string().optional(),
        population: z.number().optional(),
        country: z.string().optional(),
        country_code: z.string().optional(),
        admin1: z.string().optional(),
        admin2: z.string().optional(),
      }),
    )
    .default([]),
});

export const ElevationAnswer = z.object({ elevation: z.array(z.number().nullable()).min(1) });
