import { z } from "zod";
import { CHANGES } from "../../about/changes.ts";
import { outgoingToFeeds } from "../../about/leaves-house.ts";
import { houseStatus } from "../../jobs/house-status.ts";
import { WordChoiceSchema } from "../../store/choices-store.ts";
import { VERSION } from "../../version.ts";
import type { ApiRoute } from "../api-route.ts";
import { valueRoutes } from "../value-routes.ts";

const group = "house";

const Status = z.object({
  weather: z.record(z.string(), z.unknown()),
  morning: z.record(z.string(), z.unknown()),
  messages: z.array(
    z.object({
      id: z.string(),
      channel: z.string(),
      state: z.string(),
      tries: z.int(),
      createdUtcMs: z.number(),
    }),
  ),
  backup: z.record(z.string(), z.unknown()),
});

const About = z.object({
  version: z.string(),
  changes: z.array(
    z.object({
      version: z.string(),
      day: z.string().nullable().describe("Of publication; null while it is being made."),
      advice: z.array(z.string()),
      other: z.array(z.string()),
    }),
  ),
  calls: z.array(z.object({ what: z.string(), host: z.string() })),
});

/** How the house is doing, how it speaks, and what it is. */
export const houseRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/sites/{siteId}/status",
    id: "getStatus",
    group,
    summary: "Feed, mornings, messages and copies: instants and codes",
    answer: Status,
    faults: [404],
    async handle({ context, site }) {
      const { store, now, briefAtHour } = context;
      const status = await houseStatus({ store, site, nowUtcMs: now(), briefAtHour });
      const messages = status.messages.map(({ id, channel, state, tries, createdUtcMs }) => ({
        id,
        channel,
        state,
        tries,
        createdUtcMs,
      }));
      return { body: { ...status, messages } };
    },
  },
  ...valueRoutes({
    path: "/words",
    name: "Words",
    group,
    one: "house",
    schema: WordChoiceSchema,
    reads: "Language, numerals, hours and measures of the house",
    changes: "Changes language, numerals, hours or measures of the house",
    // As chosen, or else as set: what pages go by now.
    read: async (queries, { context }) => (await queries.choices.wordChoice()) ?? context.words.choice,
    write: (queries, choice) => queries.choices.putWordChoice(choice),
    after: (choice, { context }) => context.words.choose(choice),
  }),
  {
    method: "GET",
    path: "/about",
    id: "getAbout",
    group,
    summary: "The version, what changed in the advice, and which hosts outside the house calls and for what",
    answer: About,
    async handle({ context: { feed } }) {
      return { body: { version: VERSION, changes: CHANGES, calls: outgoingToFeeds(feed) } };
    },
  },
];
