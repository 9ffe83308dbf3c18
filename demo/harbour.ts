import type { Collection } from "../core/plan/collection.ts";
import { HARBOUR_POTS } from "./harbour-pots.ts";
import { HARBOUR_SITE } from "./harbour-site.ts";
import { HARBOUR_SPOTS } from "./harbour-spots.ts";

/** The invented roof terrace: what stands there. */
export const demoCollection: Collection = {
  site: HARBOUR_SITE,
  spots: HARBOUR_SPOTS,
  mixes: [
    {
      id: "ballast",
      name: "Ballast, lean and stony",
      recipe: {
        kind: "parts",
        parts: [
          { component: "pumice", parts: 4 },
          { component: "grit", parts: 2 },
          { component: "coco-chips", parts: 2 },
          { component: "vermicompost", parts: 1 },
        ],
      },
    },
    {
      id: "spar",
      name: "Spar, for leafy plants",
      recipe: {
        kind: "parts",
        parts: [
          { component: "coco-peat", parts: 4 },
          { component: "pine-bark-fine", parts: 3 },
          { component: "perlite", parts: 2 },
          { component: "vermicompost", parts: 1 },
        ],
      },
    },
    {
      id: "keel",
      name: "Keel, for shallow trays",
      recipe: {
        kind: "parts",
        parts: [
          { component: "calcined-clay", parts: 3 },
          { component: "lava", parts: 1 },
          { component: "pine-bark-fine", parts: 1 },
        ],
      },
    },
  ],
  pots: HARBOUR_POTS.map(({ pot }) => pot),
};
