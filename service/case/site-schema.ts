import { z } from "zod";
import type { Site } from "../../core/site/site.ts";
import type { Spot } from "../../core/site/spot.ts";
import type { Proof, SameType } from "./same-type.ts";

const share = z.number().min(0).max(1);
const localHour = z.number().min(0).max(24);

export const SiteSchema = z.strictObject({
  id: z.string().min(1).max(100),
  name: z.string().min(1).max(200),
  latDeg: z.number().min(-90).max(90),
  lonDeg: z.number().min(-180).max(180),
  elevationM: z.number().min(-450).max(9000),
  zone: z
    .string()
    .refine(isZone, { params: { code: "no-such-zone" } })
    .describe("IANA name of the zone."),
});

const ShadeWindowSchema = z.strictObject({ fromHour: localHour, toHour: localHour, sunFrac: share });

const RoofEdgeSchema = z.strictObject({
  heightM: z.number().min(0).max(100),
  behindM: z.number().min(-100).max(100),
});

const RoomSchema = z.strictObject({
  places: z.int().min(0).optional(),
  areaCm2: z.number().min(0).optional(),
  maxHeightCm: z.number().gt(0).optional(),
});

export const SpotSchema = z.strictObject({
  id: z.string().min(1).max(100),
  name: z.string().min(1).max(200),
  kind: z.enum(["open", "roof-edge", "roofed", "indoors"]),
  skyFrac: share,
  sunFrac: share,
  shade: z.array(ShadeWindowSchema).optional(),
  windFrac: share,
  rainFrac: share,
  roofEdge: RoofEdgeSchema.optional(),
  nightWarmthC: z.number().min(-10).max(30),
  heatedToC: z.number().min(-10).max(40).optional(),
  room: RoomSchema.optional(),
  walkOrder: z.number(),
  carry: z.enum(["few-steps", "same-level", "stairs"]).optional(),
});

export type SiteIsCore = Proof<SameType<z.output<typeof SiteSchema>, Site>>;
export type SpotIsCore = Proof<SameType<z.output<typeof SpotSchema>, Spot>>;

function isZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: name });
    return name.length > 0;
  } catch {
    return false;
  }
}
