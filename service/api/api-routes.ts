import type { ApiRoute } from "./api-route.ts";
import { accessRoutes } from "./routes/access-routes.ts";
import { awayRoutes } from "./routes/away-routes.ts";
import { channelRoutes } from "./routes/channel-routes.ts";
import { collectionRoutes } from "./routes/collection-routes.ts";
import { copyRoutes } from "./routes/copy-routes.ts";
import { houseRoutes } from "./routes/house-routes.ts";
import { journalRoutes } from "./routes/journal-routes.ts";
import { lastYearRoutes } from "./routes/last-year-routes.ts";
import { libraryRoutes } from "./routes/library-routes.ts";
import { mixRoutes } from "./routes/mix-routes.ts";
import { peopleRoutes } from "./routes/people-routes.ts";
import { photoRoutes } from "./routes/photo-routes.ts";
import { placeRoutes } from "./routes/place-routes.ts";
import { planRoutes } from "./routes/plan-routes.ts";
import { siteRoutes } from "./routes/site-routes.ts";
import { standRoutes } from "./routes/stand-routes.ts";
import { tableRoutes } from "./routes/table-routes.ts";

/** Every route of the interface, in the order of the reference. */
export const API_ROUTES: readonly ApiRoute[] = [
  ...planRoutes,
  ...journalRoutes,
  ...photoRoutes,
  ...standRoutes,
  ...tableRoutes,
  ...collectionRoutes,
  ...mixRoutes,
  ...libraryRoutes,
  ...siteRoutes,
  ...placeRoutes,
  ...awayRoutes,
  ...peopleRoutes,
  ...channelRoutes,
  ...lastYearRoutes,
  ...houseRoutes,
  ...accessRoutes,
  ...copyRoutes,
];
