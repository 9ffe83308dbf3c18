import { z } from "zod";
import { InstantText, instantText } from "../../case/instant.ts";
import { potStands, waterMlNow } from "../../pages/pots/pot-stand.ts";
import { siteNow } from "../../pages/site-now.ts";
import { type ApiRoute, notThere } from "../api-route.ts";
import { PartQuery, partOf, partSchema } from "../page-of.ts";

const Stand = z.object({
  potId: z.string(),
  spotId: z.string().describe("Where it stands now, by the journal."),
  mixId: z.string().nullable().describe("Null until a planting has been logged."),
  plantedAt: InstantText.nullable(),
  waterMl: z.number().nullable().describe("In the pot now, as the newest plan reckons it; null without one."),
});

/** How every pot stands now, as the journal leaves it. */
export const standRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/sites/{siteId}/stands",
    id: "listStands",
    group: "pots",
    summary: "Where each pot that is still there stands now, in what, and with how much water",
    query: PartQuery,
    answer: partSchema(Stand),
    async handle({ context, query }) {
      const now = await siteNow(context);
      if (!now) return notThere("site");
      const stands = potStands(now).map((stand) => ({
        potId: stand.pot.id,
        spotId: stand.spotId,
        mixId: stand.mix?.id ?? null,
        plantedAt: stand.planted && instantText(stand.planted.atUtcMs),
        waterMl: waterMlNow(stand),
      }));
      return partOf(stands, { asked: query, idOf: ({ potId }) => potId });
    },
  },
];
