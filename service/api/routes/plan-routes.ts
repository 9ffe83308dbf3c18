import { z } from "zod";
import type { Outcome, Problem } from "../../../core/problem.ts";
import { DayText } from "../../case/instant.ts";
import { PlanSchema } from "../../case/plan-schema.ts";
import type { Proof, SameType } from "../../case/same-type.ts";
import { nextHours } from "../../pages/drawing/next-hours.ts";
import { type WhatIf, whatIf } from "../../pages/pots/what-if.ts";
import { siteNow } from "../../pages/site-now.ts";
import { fortnight } from "../../pages/sky/fortnight.ts";
import { briefNow } from "../../pages/today/brief-now.ts";
import type { Refusal } from "../../problem-answer.ts";
import type { StoredPlan as KeptPlan } from "../../store/plans-store.ts";
import { type ApiRoute, notThere } from "../api-route.ts";
import { PartQuery, partOf, partSchema } from "../page-of.ts";

const group = "plan";
const Spread = z.object({ low: z.number(), mid: z.number(), high: z.number() });

const Course = z.object({
  kind: z.enum(["left", "watered", "elsewhere"]),
  spotName: z.string(),
  contentFrac: z.array(Spread).describe("Content by step, shares of what the drained pot holds."),
  refillDays: z.number().nullable(),
  wetBaseHours: z.number(),
});

const WhatIfSchema = z.object({
  startUtcMs: z.number(),
  stepMs: z.number(),
  refillFrac: z.number(),
  capacityMl: z.number(),
  courses: z.array(Course),
});

export type WhatIfIsOurs = Proof<SameType<z.output<typeof WhatIfSchema>, WhatIf>>;

const StoredPlan = z.object({
  id: z.int(),
  kind: z.enum(["morning", "amendment", "asked", "watch"]),
  madeUtcMs: z.number(),
  late: z.boolean(),
  plan: PlanSchema,
});

/** What the forecast does not know is null. */
const maybe = z.number().nullable();
const Hour = z.object({
  startUtcMs: z.number(),
  tempC: maybe,
  rainMm: z.object({ low: maybe, mid: maybe, high: maybe }),
  gustMPerS: maybe,
  isDay: z.boolean(),
});
const SKY_HOURS = 48;

const SkySchema = z.object({
  source: z.string(),
  credit: z.string().describe("To be shown wherever the weather is."),
  fetchedUtcMs: z.number(),
  hours: z.array(Hour).describe("The next two days, from the hour under way."),
  days: PlanSchema.shape.days,
});

/** Today's plan, plans gone by, what would happen if, and the sky. */
export const planRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/sites/{siteId}/plan",
    id: "getPlan",
    group,
    summary: "The newest plan: every deed with its reason and how sure it is",
    answer: PlanSchema,
    hasEtag: true,
    faults: [404],
    async handle({ context, site }) {
      const plan = await context.store.plans.latest(site.id);
      return plan ? { body: plan } : notThere("plan");
    },
  },
  {
    method: "POST",
    path: "/sites/{siteId}/plan",
    id: "makePlan",
    group,
    summary: "Makes a new plan from what is known now",
    answer: PlanSchema,
    answerStatus: 201,
    faults: [404, 503],
    async handle({ context, site }) {
      const problems = problemsOf(await context.replan(site.id));
      if (problems.length > 0) return noPlan(problems);
      const plan = await context.store.plans.latest(site.id);
      return plan ? { body: plan } : notThere("plan");
    },
  },
  {
    method: "GET",
    path: "/sites/{siteId}/plans",
    id: "listPlans",
    group,
    summary: "Plans as they were made, newest first",
    query: PartQuery.extend({ forDay: DayText.optional() }),
    answer: partSchema(StoredPlan),
    faults: [404],
    async handle({ context, site, query }) {
      const plans = await context.store.plans.list(site.id, MOST_PLANS);
      const items = plans
        .filter(({ plan }) => query.forDay === undefined || plan.forDay === query.forDay)
        .map(shownPlan);
      return partOf(items, { asked: query, idOf: ({ id }) => String(id) });
    },
  },
  {
    method: "GET",
    path: "/sites/{siteId}/plans/{planId}",
    id: "getStoredPlan",
    group,
    summary: "One plan as it was made",
    answer: StoredPlan,
    hasEtag: true,
    async handle({ context, site, params }) {
      const id = /^\d{1,15}$/.test(params.planId!) ? Number(params.planId) : 0;
      const stored = await context.store.plans.get(id);
      return stored?.plan.siteId === site.id ? { body: shownPlan(stored) } : notThere("plan");
    },
  },
  {
    method: "GET",
    path: "/sites/{siteId}/brief",
    id: "getBrief",
    group,
    summary: "The newest plan in the words of the house, as the morning brief says it",
    answerType: "text/plain; charset=utf-8",
    async handle({ context, site }) {
      const [plan, collection] = [
        await context.store.plans.latest(site.id),
        await context.store.collection(site.id),
      ];
      const file = await briefNow(context, { plan, collection });
      return file === null ? notThere("plan") : { file };
    },
  },
  {
    method: "GET",
    path: "/sites/{siteId}/pots/{potId}/what-if",
    id: "whatIf",
    group,
    summary: "How a pot goes on when left, watered now, or stood elsewhere",
    query: z.object({ spot: z.string().max(100).optional().describe("Id of the other spot.") }),
    answer: WhatIfSchema,
    faults: [404],
    async handle({ context, site, params, query }) {
      const seen = await whatIf(context, { siteId: site.id, potId: params.potId!, spotId: query.spot });
      return seen ? { body: seen } : notThere("planted pot, or no weather yet for it");
    },
  },
  {
    method: "GET",
    path: "/sites/{siteId}/sky",
    id: "getSky",
    group,
    summary: "The weather by hour and by day, as far as it is known",
    answer: SkySchema,
    faults: [404],
    async handle({ context, site }) {
      const weather = await context.store.weather.latest(site.id);
      const now = await siteNow(context);
      if (!weather || !now) return notThere("weather");
      const settings = await context.store.settings.get(site.id);
      const { plan, journal } = now;
      const days = fortnight({ plan, weather, site, journal, nowUtcMs: context.now(), settings });
      const hours = nextHours({ weather, site, nowUtcMs: context.now(), hourCount: SKY_HOURS });
      const { source, credit, fetchedUtcMs } = weather.origin;
      return { body: { source, credit, fetchedUtcMs, hours, days } };
    },
  },
];

/** Plans are read whole to be listed; older ones stand in the export. */
const MOST_PLANS = 400;

function shownPlan({ id, kind, madeUtcMs, late, plan }: KeptPlan): Omit<KeptPlan, "weatherPullId"> {
  return { id, kind, madeUtcMs, late, plan };
}

function problemsOf(made: unknown): readonly Problem[] {
  const outcome = made as Outcome<unknown> | undefined;
  return outcome?.ok === false ? outcome.problems : [];
}

function noPlan(problems: readonly Problem[]): Refusal {
  const detail =
    "No plan can be made just now; the reasons stand under problems. The one before still holds.";
  return { status: 503, code: "no-plan", detail, problems };
}
