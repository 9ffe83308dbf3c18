import { z } from "zod";
import { DEFAULT_SETTINGS } from "../../../core/plan/settings.ts";
import { SettingsSchema } from "../../case/settings-schema.ts";
import { SiteSchema } from "../../case/site-schema.ts";
import { type ApiOutcome, type ApiRoute, unfit } from "../api-route.ts";
import { editRefusal } from "../etags.ts";

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
  {
    method: "GET",
    path: "/sites/{siteId}",
    id: "getSite",
    group,
    summary: "One site",
    answer: SiteSchema,
    hasEtag: true,
    faults: [404],
    handle: async ({ site }) => ({ body: site }),
  },
  {
    method: "PUT",
    path: "/sites/{siteId}",
    id: "putSite",
    group,
    summary: "Changes name, place or zone; the plan is made anew",
    body: SiteSchema,
    answer: SiteSchema,
    hasEtag: true,
    faults: [404, 412, 422, 428],
    async handle({ c, context, site, body }) {
      if (body.id !== site.id)
        return unfit([{ code: "other-id", path: ["id"], data: { given: body.id, inPath: site.id } }]);
      const refusal = editRefusal(c, site);
      if (refusal) return refusal;
      await context.store.sites.put(body);
      await context.replan(site.id);
      return { body };
    },
  },
  {
    method: "GET",
    path: "/sites/{siteId}/settings",
    id: "getSettings",
    group,
    summary: "House rules",
    answer: SettingsSchema,
    hasEtag: true,
    faults: [404],
    handle: async ({ context, site }) => ({ body: await context.store.settings.get(site.id) }),
  },
  {
    method: "PUT",
    path: "/sites/{siteId}/settings",
    id: "putSettings",
    group,
    summary: "Changes the house rules; what is left out takes its usual value",
    body: SettingsSchema,
    answer: SettingsSchema,
    hasEtag: true,
    faults: [404, 412, 422, 428],
    async handle({ c, context, site, body }) {
      const refusal = editRefusal(c, await context.store.settings.get(site.id));
      if (refusal) return refusal;
      const settings = { ...DEFAULT_SETTINGS, ...body };
      if (settings.dayEndsHour <= settings.dayStartsHour)
        return unfit([{ code: "ends-before-start", path: ["dayEndsHour"] }]);
      await context.store.settings.put(site.id, settings);
      await context.replan(site.id);
      return { body: await context.store.settings.get(site.id) };
    },
  },
];

const SITE_IS_HERE = {
  status: 409,
  code: "site-is-here",
  detail: "The house has its site already. Change that one with PUT.",
} as const;
