import { z } from "zod";
import { houseStatus } from "../../jobs/house-status.ts";
import { ExportSchema } from "../../store/export-schema.ts";
import { PersonSchema } from "../../store/person.ts";
import { exportAll } from "../../store/transfer.ts";
import type { ApiRoute } from "../api-route.ts";

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

const Account = z.object({
  id: z.string(),
  name: z.string(),
  role: z.enum(["owner", "helper", "viewer"]),
  hasPassphrase: z.boolean(),
});

/** How the house is doing, who may come in, and everything there is in one file. */
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
  {
    method: "GET",
    path: "/people",
    id: "listPeople",
    group,
    summary: "Who gets messages, with their language and quiet hours",
    answer: z.object({ items: z.array(PersonSchema) }),
    async handle({ context }) {
      return { body: { items: await context.store.people.list() } };
    },
  },
  {
    method: "GET",
    path: "/accounts",
    id: "listAccounts",
    group,
    summary: "Who may sign in, and as what",
    answer: z.object({ items: z.array(Account) }),
    async handle({ context }) {
      const items = (await context.store.accounts.list()).map(({ id, name, role, passphrase }) => ({
        id,
        name,
        role,
        hasPassphrase: passphrase !== null,
      }));
      return { body: { items } };
    },
  },
  {
    method: "GET",
    path: "/export",
    id: "exportAll",
    group,
    summary: "Everything of the house as one object, as leebench import reads it",
    answer: ExportSchema,
    handle: async ({ context }) => ({ body: await exportAll(context.store, context.now()) }),
  },
];
