import * as z from "zod";

const Details = z.record(z.string(), z.number().nullable().optional());

/** Totals over the time after the step's instant; the last steps have none. */
const Ahead = z
  .object({
    summary: z.object({ symbol_code: z.string().optional() }).optional(),
    details: Details.optional(),
  })
  .optional();

export const FallbackAnswer = z.object({
  properties: z.object({
    meta: z.object({ units: z.record(z.string(), z.string()).default({}) }),
    timeseries: z.array(
      z.object({
        time: z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/),
        data: z.object({
          instant: z.object({ details: Details }),
          next_1_hours: Ahead,
          next_6_hours: Ahead,
        }),
      }),
    ),
  }),
});
export type FallbackAnswer = z.infer<typeof FallbackAnswer>;
export type FallbackStep = FallbackAnswer["properties"]["timeseries"][number];
