import type { Site } from "../core/site/site.ts";

/** A port town on an island that no map has: these coordinates are open sea. */
export const HARBOUR_SITE: Site = {
  id: "varrowhaven",
  name: "Varrowhaven, the chandler's roof",
  latDeg: 30.86,
  lonDeg: -21.34,
  elevationM: 14,
  zone: "Atlantic/Cape_Verde",
};
