import type { Spot } from "../../../core/site/spot.ts";

type ReadySpot = Omit<Spot, "id" | "name" | "walkOrder">;

/**
 * Places to start from, each a description that the grower can change. Every share is chosen by us as a middling case
 * of its kind, except the warmth beside a wall, which growers put at one to two degrees (growers' reports).
 */
export const READY_SPOTS = {
  "open-terrace": { kind: "open", skyFrac: 0.9, sunFrac: 1, windFrac: 0.9, rainFrac: 1, nightWarmthC: 0 },
  "warm-wall": { kind: "open", skyFrac: 0.5, sunFrac: 0.85, windFrac: 0.5, rainFrac: 0.8, nightWarmthC: 1.5 },
  "half-shade": { kind: "open", skyFrac: 0.4, sunFrac: 0.4, windFrac: 0.6, rainFrac: 0.7, nightWarmthC: 0.5 },
  "under-eaves": {
    kind: "roof-edge",
    skyFrac: 0.4,
    sunFrac: 0.6,
    windFrac: 0.7,
    rainFrac: 0,
    roofEdge: { heightM: 2.2, behindM: 0.5 },
    nightWarmthC: 1,
  },
  "roofed-porch": {
    kind: "roofed",
    skyFrac: 0.25,
    sunFrac: 0.35,
    windFrac: 0.5,
    rainFrac: 0,
    nightWarmthC: 1,
  },
  "cold-glass": { kind: "roofed", skyFrac: 0.6, sunFrac: 0.7, windFrac: 0.1, rainFrac: 0, nightWarmthC: 2 },
  shed: { kind: "indoors", skyFrac: 0.05, sunFrac: 0.05, windFrac: 0.02, rainFrac: 0, nightWarmthC: 3 },
  "bright-room": {
    kind: "indoors",
    skyFrac: 0.2,
    sunFrac: 0.3,
    windFrac: 0.05,
    rainFrac: 0,
    nightWarmthC: 3,
    heatedToC: 16,
  },
} as const satisfies Record<string, ReadySpot>;

export type ReadySpotKey = keyof typeof READY_SPOTS;

export const READY_SPOT_KEYS = Object.keys(READY_SPOTS) as ReadySpotKey[];
