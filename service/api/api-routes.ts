import type { ApiRoute } from "./api-route.ts";
import { collectionRoutes } from "./routes/collection-routes.ts";
import { houseRoutes } from "./routes/house-routes.ts";
import { journalRoutes } from "./routes/journal-routes.ts";
import { mixRoutes } from "./routes/mix-routes.ts";
import { planRoutes } from "./routes/plan-routes.ts";
import { siteRoutes } from "./routes/site-routes.ts";

/** Every route of the interface, in the order of the reference. */
export const API_ROUTES: readonly ApiRoute[] = [
  ...planRoutes,
  ...journalRoutes,
  ...collectionRoutes,
  ...mixRoutes,
  ...siteRoutes,
  ...houseRoutes,
];
