import { z } from "zod";
import { SettingsSchema } from "../../case/settings-schema.ts";
import { SiteSchema } from "../../case/site-schema.ts";
import type { ApiOutcome, ApiRoute } from "../api-route.ts";
import { idProblems, valueRoutes } from "../value-routes.ts";

const group = "site";

/** The place, and how its grower wants to be advised. */
export const siteRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/sites",
    id: "listSites",
    group,
    summary: "The sites of the house; the pages show the first",
    answer: z.object({ items: z.array(SiteSchema) }),
    async handle({ context }) {
      return { body: { items: await context.store.sites.list() } };
    },
  },
  {
    method: "POST",
    path: "/sites",
    id: "addSite",
    group,
    summary: "Enters the site of a house that has none yet",
    body: SiteSchema,
    answer: SiteSchema,
    answerStatus: 201,
    faults: [409, 422],
    async handle({ context, body }) {
      return context.store.together(async (step): Promise<ApiOutcome> => {
        if ((await step.sites.list()).length > 0) return SITE_IS_HERE;
        await step.sites.put(body);
        return { body };
      });
    },
  },
  ...valueRoutes({
    path: "/sites/{siteId}",
    name: "Site",
    group,
    one: "site",
    schema: SiteSchema,
    reads: "One site",
    changes: "Changes name, place or zone; the plan is made anew",
    read: (queries, { site }) => queries.sites.get(site.id),
    problems: ({ id }, { site }) => idProblems(id, site.id),
    write: (queries, site) => queries.sites.put(site),
    after: (_, { context, site }) => context.replan(site.id),
  }),
  ...valueRoutes({
    path: "/sites/{siteId}/settings",
    name: "Settings",
    group,
    one: "site",
    schema: SettingsSchema,
    reads: "House rules",
    changes: "Changes the house rules; what is left out takes its usual value; the plan is made anew",
    read: async (queries, { site }) => queries.settings.get(site.id),
    problems: ({ dayStartsHour, dayEndsHour }) =>
      dayEndsHour <= dayStartsHour ? [{ code: "ends-before-start", path: ["dayEndsHour"] }] : [],
    write: (queries, settings, { site }) => queries.settings.put(site.id, settings),
    after: (_, { context, site }) => context.replan(site.id),
  }),
];

const SITE_IS_HERE = {
  status: 409,
  code: "site-is-here",
  detail: "The house has its site already. Change that one with PUT.",
} as const;
