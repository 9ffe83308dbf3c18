import { z } from "zod";
import { messageFaultOf } from "../../notify/message-fault.ts";
import { receivers } from "../../notify/receivers.ts";
import { sendTest } from "../../notify/send-test.ts";
import { siteNow } from "../../pages/site-now.ts";
import { WordChoiceSchema } from "../../store/choices-store.ts";
import { MESSAGE_KINDS, PersonSchema } from "../../store/person.ts";
import { type ApiRoute, notThere } from "../api-route.ts";
import { idUnderKey } from "../under-key.ts";
import { idProblems, valueRoutes } from "../value-routes.ts";

const group = "people";

const Person = z.strictObject({
  id: PersonSchema.shape.id.max(100),
  name: z.string().trim().min(1).max(80),
  ...WordChoiceSchema.shape,
  quiet: PersonSchema.shape.quiet.describe(
    "Local hours from midnight between which nothing rings; may run over midnight.",
  ),
});

const NewPerson = Person.omit({ id: true }).partial({ locale: true, units: true, quiet: true });

const Way = z.object({
  name: z.string(),
  sort: z.enum(["log", "mail", "push", "webhook", "mqtt"]),
  address: z.string().nullable(),
  personId: z.string().describe("`house` where the way is set in the settings."),
  kinds: z.array(z.enum(MESSAGE_KINDS)),
});

const Mornings = z.strictObject({
  skipEmpty: z.array(z.string().max(100)).max(1000).describe("By person; `house` for the ways of the house."),
});

/** Who gets messages, how they are spoken to, when not, and by which ways. */
export const peopleRoutes: readonly ApiRoute[] = [
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
    method: "POST",
    path: "/people",
    id: "addPerson",
    group,
    summary: "Enters somebody; what is left out is as for the house",
    body: NewPerson,
    answer: PersonSchema,
    answerStatus: 201,
    takesKey: true,
    async handle({ c, context, body }) {
      const { locale, units } = context.words.choice;
      const person = { id: idUnderKey(c, body), locale, units, quiet: null, ...body };
      await context.store.people.put(person);
      return { body: person };
    },
  },
  ...valueRoutes({
    path: "/people/{personId}",
    name: "Person",
    group,
    one: "person",
    schema: Person,
    reads: "One person",
    changes: "Changes name, language, measures or quiet hours",
    read: async (queries, { params }) => (await queries.people.get(params.personId!)) ?? undefined,
    problems: ({ id }, { params }) => idProblems(id, params.personId),
    write: (queries, person) => queries.people.put(person),
  }),
  {
    method: "DELETE",
    path: "/people/{personId}",
    id: "removePerson",
    group,
    summary: "Removes somebody with every way to them",
    answerStatus: 204,
    faults: [404],
    async handle({ context, params }) {
      if (!(await context.store.people.get(params.personId!))) return notThere("person");
      await context.store.people.remove(params.personId!);
      return {};
    },
  },
  {
    method: "GET",
    path: "/ways",
    id: "listWays",
    group,
    summary: "Every way by which messages go out, those of the settings included (mail, message broker)",
    answer: z.object({ items: z.array(Way) }),
    async handle({ context }) {
      const items = (await context.post.ways()).map(({ channel, personId, kinds }) => ({
        name: channel.name,
        sort: channel.sort ?? (channel.to === undefined ? ("log" as const) : ("mail" as const)),
        address: channel.to ?? null,
        personId,
        kinds: [...kinds],
      }));
      return { body: { items } };
    },
  },
  {
    method: "POST",
    path: "/ways/{wayName}/test",
    id: "testWay",
    group,
    summary: "Sends one message by a way at once, whatever the hour, and tells how it went",
    answer: z.object({
      isDelivered: z.boolean(),
      fault: z.string().nullable().describe("What was in the way, as a code; null when it got through."),
    }),
    faults: [404],
    async handle({ context, params }) {
      const now = await siteNow(context);
      const way = (await context.post.ways()).find(({ channel }) => channel.name === params.wayName);
      if (!now || !way) return notThere("way");
      const delivery = await sendTest(way, { store: context.store, site: now.site, nowUtcMs: context.now() });
      const fault = delivery.ok ? null : messageFaultOf(delivery.fault);
      return { body: { isDelivered: delivery.ok, fault } };
    },
  },
  ...valueRoutes({
    path: "/mornings",
    name: "Mornings",
    group,
    one: "house",
    schema: Mornings,
    reads: "Who wants no message on a morning that asks for nothing",
    changes: "Changes who wants no message on a morning that asks for nothing",
    read: async ({ choices }) => ({ skipEmpty: await choices.skipEmpty() }),
    async problems({ skipEmpty }, { context: { words } }, store) {
      const known = new Set((await receivers({ store, words })).map(({ id }) => id));
      return skipEmpty.flatMap((id, index) =>
        known.has(id) ? [] : [{ code: "unknown-person", path: ["skipEmpty", index], data: { given: id } }],
      );
    },
    write: ({ choices }, { skipEmpty }) => choices.putSkipEmpty(skipEmpty),
  }),
];
