import { z } from "zod";
import { calendarDay } from "../../../core/site/local-days.ts";
import { handoverProblems } from "../../pages/holiday/handover-form.ts";
import { handoversAhead, sheetNow } from "../../pages/holiday/sheet-now.ts";
import { HandoverSchema } from "../../store/handover.ts";
import { type ApiRoute, notThere, unfit } from "../api-route.ts";
import { idUnderKey } from "../under-key.ts";

const group = "away";
const Part = z.object({ heading: z.string(), lines: z.array(z.string()) });

const SheetSchema = z.object({
  title: z.string(),
  lead: z.string(),
  where: Part,
  days: z.array(z.object({ name: z.string(), lines: z.array(z.string()) })),
  keepDry: Part,
  nothing: z.string().describe("What to say of a day without lines."),
  beyond: z.string().nullable(),
  care: z.string(),
  credit: z.string(),
});

const NewHandover = HandoverSchema.omit({ id: true })
  .extend({ personId: z.string().min(1).max(100) })
  .partial({ alone: true });

/** Who looks after the pots while the grower is away, and the sheet for them. */
export const awayRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/sites/{siteId}/sheet",
    id: "getSheet",
    group,
    summary: "What to do on which day, in words, for somebody who knows neither the plants nor the places",
    answer: SheetSchema,
    async handle({ context, site }) {
      const { store, words } = context;
      const [plan, collection] = [await store.plans.latest(site.id), await store.collection(site.id)];
      const handovers = await handoversAhead(context, site);
      const sheet = sheetNow({ plan, collection }, { handovers, words });
      return sheet ? { body: sheet } : notThere("plan");
    },
  },
  {
    method: "GET",
    path: "/sites/{siteId}/handovers",
    id: "listHandovers",
    group,
    summary: "Who looks after the pots and when, earliest first; what is over is left out",
    answer: z.object({ items: z.array(HandoverSchema) }),
    handle: async ({ context, site }) => ({ body: { items: await handoversAhead(context, site) } }),
  },
  {
    method: "POST",
    path: "/sites/{siteId}/handovers",
    id: "addHandover",
    group,
    summary: "Hands the pots over to a person between two days, both included",
    body: NewHandover,
    answer: HandoverSchema,
    answerStatus: 201,
    takesKey: true,
    async handle({ c, context, site, body }) {
      const { choices, people } = context.store;
      const beside = {
        today: calendarDay(context.now(), site.zone),
        personIds: (await people.list()).map(({ id }) => id),
      };
      const problems = handoverProblems(body, beside);
      if (problems.length > 0) return unfit(problems);
      const handover = { alone: false, ...body, id: idUnderKey(c, body) };
      const others = (await choices.handovers()).filter(({ id }) => id !== handover.id);
      await choices.putHandovers([...others, handover]);
      return { body: handover };
    },
  },
  {
    method: "DELETE",
    path: "/sites/{siteId}/handovers/{handoverId}",
    id: "endHandover",
    group,
    summary: "Ends a hand-over now, or takes it back before it begins",
    answerStatus: 204,
    async handle({ context, params }) {
      const { choices } = context.store;
      const all = await choices.handovers();
      const left = all.filter(({ id }) => id !== params.handoverId);
      if (left.length === all.length) return notThere("hand-over");
      await choices.putHandovers(left);
      return {};
    },
  },
];
