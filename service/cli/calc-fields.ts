import { z } from "zod";
import type { Problem } from "../../core/problem.ts";

const tempC = z.number().min(-90).max(60);

/** Limits that no place on earth goes beyond; they catch a wrong unit, not rare weather. */
export const FIELDS = {
  latDeg: z.number().min(-90).max(90),
  lonDeg: z.number().min(-180).max(180),
  elevationM: z.number().min(-500).max(9000),
  dayOfYear: z.int().min(1).max(366),
  tempC,
  dewPointC: z.number().min(-110).max(60),
  windMPerS: z.number().min(0).max(120),
  windHeightM: z.number().min(0.2).max(200),
  radiationMjPerM2PerDay: z.number().min(0).max(60),
  radiationMjPerM2PerHour: z.number().min(0).max(6),
  share: z.number().min(0).max(1),
} as const;

/** What every daily calculation takes. */
export const dayFields = {
  latDeg: FIELDS.latDeg,
  dayOfYear: FIELDS.dayOfYear,
  tempMinC: tempC,
  tempMaxC: tempC,
} as const;

export function dayRange(line: { tempMinC: number; tempMaxC: number }): Problem[] {
  if (line.tempMinC <= line.tempMaxC) return [];
  const data = { given: line.tempMinC, atMost: line.tempMaxC, other: "tempMaxC" };
  return [{ code: "wrong-order", path: ["tempMinC"], data }];
}
