import { z } from "zod";
import { askOf, placesFor } from "../../replay/last-year.ts";
import { type ApiRoute, notThere, unfit } from "../api-route.ts";

const group = "last year";
const Ask = z.object({ placeId: z.string(), year: z.int() });

const State = z.object({
  kind: z.enum(["none", "running", "done", "failed"]),
  ask: Ask.optional(),
  doneFrac: z.number().optional().describe("While it runs."),
  report: z.record(z.string(), z.unknown()).optional().describe("Once it is done, in figures."),
  codes: z.array(z.string()).optional().describe("What went wrong, where it failed."),
});

/** How last year would have gone under the plan and under other ways. */
export const lastYearRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/sites/{siteId}/last-year",
    id: "getLastYear",
    group,
    summary: "The replay that was asked for last: how far it is, or what came of it",
    answer: State,
    async handle({ context: { replays } }) {
      return { body: (await replays?.state()) ?? { kind: "none" } };
    },
  },
  {
    method: "POST",
    path: "/sites/{siteId}/last-year",
    id: "playLastYear",
    group,
    summary: "Begins a replay of the house's pots through a year; one under way goes on instead",
    body: z.strictObject({
      placeId: z.string().max(100).describe("`own-site`, or a place whose days come with the program."),
    }),
    answer: State,
    answerStatus: 202,
    async handle({ context, site, body: { placeId } }) {
      const known = placesFor(context);
      if (!known.includes(placeId))
        return unfit([{ code: "not-one-of", path: ["placeId"], data: { given: placeId, known } }]);
      if (!context.replays) return notThere("replay");
      context.replays.start(askOf(placeId, { site, nowUtcMs: context.now() }));
      return { body: await context.replays.state() };
    },
  },
];
