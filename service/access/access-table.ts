import type { Role } from "./roles.ts";

/**
 * Whom a route lets in. `anyone`: asked nothing, tells nothing of the house. `own-link`: the address itself carries a
 * signed permission for one purpose, which the route checks. A role: that one or a higher one.
 */
export type Admits = "anyone" | "own-link" | Role;

/** Method, address as the router writes it, whom it lets in. */
export type AccessRow = readonly [method: "GET" | "POST" | "PUT" | "PATCH" | "DELETE", path: string, Admits];

/**
 * The one table of who may do what; the gate reads it and knows nothing else. What does not stand here is for the owner
 * alone, and a test fails until it does.
 */
export const ACCESS_TABLE: readonly AccessRow[] = [
  ["GET", "/healthz", "anyone"],
  ["GET", "/readyz", "anyone"],
  ["GET", "/metrics", "viewer"],

  ["GET", "/style.css", "anyone"],
  ["GET", "/app.js", "anyone"],
  ["GET", "/worker.js", "anyone"],
  ["GET", "/icon.svg", "anyone"],
  ["GET", "/app.webmanifest", "anyone"],
  ["GET", "/away", "anyone"],

  ["GET", "/sign-in", "anyone"],
  ["POST", "/sign-in", "anyone"],
  ["POST", "/sign-out", "anyone"],
  ["GET", "/claim", "anyone"],
  ["POST", "/claim", "anyone"],
  ["GET", "/house/access", "viewer"],
  ["POST", "/house/access/passphrase", "viewer"],
  ["POST", "/house/access/sign-out-everywhere", "viewer"],
  ["POST", "/house/access/people", "owner"],
  ["POST", "/house/access/people/:id", "owner"],
  ["POST", "/house/access/tokens", "owner"],
  ["POST", "/house/access/tokens/:id", "owner"],

  ["GET", "/answer/:token", "own-link"],
  ["POST", "/answer/:token", "own-link"],
  ["GET", "/stop-mail/:token", "own-link"],
  ["POST", "/stop-mail/:token", "own-link"],

  ["GET", "/", "viewer"],
  ["POST", "/done", "helper"],
  ["POST", "/undo", "helper"],
  ["POST", "/replan", "helper"],
  ["GET", "/holiday", "viewer"],
  ["GET", "/sky", "viewer"],

  ["GET", "/begin", "owner"],
  ["POST", "/begin/site", "owner"],
  ["POST", "/begin/spots", "owner"],
  ["POST", "/begin/mix", "owner"],
  ["POST", "/begin/pot", "owner"],

  ["GET", "/pots", "viewer"],
  ["POST", "/pots/log", "helper"],
  ["POST", "/pots/take-back", "helper"],
  ["GET", "/pots/new", "owner"],
  ["POST", "/pots/new", "owner"],
  ["GET", "/pots/paste", "owner"],
  ["POST", "/pots/paste", "owner"],
  ["GET", "/pots/:id", "viewer"],
  ["GET", "/pots/:id/what-if", "viewer"],
  ["GET", "/pots/:id/change", "owner"],
  ["POST", "/pots/:id/change", "owner"],
  ["POST", "/pots/:id/log", "helper"],
  ["POST", "/pots/:id/photo", "helper"],
  ["GET", "/photos/:name", "viewer"],

  ["GET", "/mixes", "viewer"],
  ["GET", "/mixes/:id", "viewer"],
  ["POST", "/mixes/:id", "owner"],
  ["GET", "/mixes/:id/batch", "viewer"],
  ["GET", "/mixes/:id/test", "viewer"],
  ["POST", "/mixes/:id/test", "owner"],
  ["GET", "/components", "viewer"],
  ["GET", "/components/:id", "viewer"],
  ["POST", "/components/:id", "owner"],

  ["GET", "/spots", "viewer"],
  ["GET", "/spots/:id", "viewer"],
  ["POST", "/spots/:id", "owner"],

  ["GET", "/journal", "viewer"],
  ["POST", "/journal/instrument", "helper"],
  ["POST", "/journal/late", "helper"],
  ["GET", "/journal/:id/correct", "helper"],
  ["POST", "/journal/:id/correct", "helper"],

  ["GET", "/house", "viewer"],
  ["GET", "/house/status", "viewer"],
  ["GET", "/house/copies", "owner"],
  ["POST", "/house/copies", "owner"],
  ["GET", "/house/copies/export.json", "owner"],
  ["GET", "/house/copies/pots.csv", "owner"],
  ["GET", "/house/copies/:name", "owner"],
  ["GET", "/house/words", "viewer"],
  ["POST", "/house/words", "owner"],
  ["POST", "/house/site", "owner"],
  ["POST", "/house/rules", "owner"],

  ["GET", "/api/v1/openapi.json", "anyone"],
  ["GET", "/api/v1/reference", "anyone"],
  ["GET", "/api/v1/sites", "viewer"],
  ["POST", "/api/v1/sites", "owner"],
  ["GET", "/api/v1/sites/:siteId", "viewer"],
  ["PUT", "/api/v1/sites/:siteId", "owner"],
  ["GET", "/api/v1/sites/:siteId/settings", "viewer"],
  ["PUT", "/api/v1/sites/:siteId/settings", "owner"],
  ["GET", "/api/v1/sites/:siteId/plan", "viewer"],
  ["POST", "/api/v1/sites/:siteId/plan", "helper"],
  ["GET", "/api/v1/sites/:siteId/plans", "viewer"],
  ["GET", "/api/v1/sites/:siteId/pots/:potId/what-if", "viewer"],
  ["GET", "/api/v1/sites/:siteId/sky", "viewer"],
  ["GET", "/api/v1/sites/:siteId/journal", "viewer"],
  ["POST", "/api/v1/sites/:siteId/journal", "helper"],
  ["POST", "/api/v1/sites/:siteId/journal/:entryId/correction", "helper"],
  ["POST", "/api/v1/sites/:siteId/journal/:entryId/undo", "helper"],
  ["GET", "/api/v1/sites/:siteId/pots", "viewer"],
  ["GET", "/api/v1/sites/:siteId/pots/:potId", "viewer"],
  ["PUT", "/api/v1/sites/:siteId/pots/:potId", "owner"],
  ["GET", "/api/v1/sites/:siteId/spots", "viewer"],
  ["GET", "/api/v1/sites/:siteId/spots/:spotId", "viewer"],
  ["PUT", "/api/v1/sites/:siteId/spots/:spotId", "owner"],
  ["GET", "/api/v1/sites/:siteId/mixes", "viewer"],
  ["GET", "/api/v1/sites/:siteId/mixes/:mixId", "viewer"],
  ["PUT", "/api/v1/sites/:siteId/mixes/:mixId", "owner"],
  ["GET", "/api/v1/sites/:siteId/components", "viewer"],
  ["GET", "/api/v1/sites/:siteId/components/:componentId", "viewer"],
  ["PUT", "/api/v1/sites/:siteId/components/:componentId", "owner"],
  ["GET", "/api/v1/sites/:siteId/groups", "viewer"],
  ["GET", "/api/v1/sites/:siteId/groups/:groupId", "viewer"],
  ["PUT", "/api/v1/sites/:siteId/groups/:groupId", "owner"],
  ["GET", "/api/v1/library/components", "viewer"],
  ["POST", "/api/v1/sites/:siteId/mix-figures", "viewer"],
  ["POST", "/api/v1/sites/:siteId/batch", "viewer"],
  ["GET", "/api/v1/sites/:siteId/status", "viewer"],
  ["GET", "/api/v1/people", "owner"],
  ["GET", "/api/v1/export", "owner"],
];
