import type { MixPart } from "../../../core/mix/mix.ts";

/** Mixes to start from, chosen by us as middling cases; none is anybody's recipe. */
export const READY_MIXES = {
  lean: [
    { component: "pumice", parts: 3 },
    { component: "pine-bark-fine", parts: 2 },
    { component: "grit", parts: 1 },
    { component: "coco-peat", parts: 1 },
  ],
  leafy: [
    { component: "coco-peat", parts: 4 },
    { component: "pine-bark-fine", parts: 3 },
    { component: "perlite", parts: 2 },
    { component: "vermicompost", parts: 1 },
  ],
  bagged: [
    { component: "peat", parts: 7 },
    { component: "pine-bark-fine", parts: 2 },
    { component: "perlite", parts: 1 },
  ],
} as const satisfies Record<string, readonly MixPart[]>;

export type ReadyMixKey = keyof typeof READY_MIXES;

export const READY_MIX_KEYS = Object.keys(READY_MIXES) as ReadyMixKey[];
