import { z } from "zod";
import type { PageContext } from "../../pages/page-context.ts";
import { NewChannelSchema, newChannel, newSecret } from "../../pages/people/new-channel.ts";
import { shownAddress } from "../../pages/people/shown-address.ts";
import { MESSAGE_KINDS, type StoredChannel } from "../../store/person.ts";
import type { StoreQueries } from "../../store/store-queries.ts";
import { type ApiCall, type ApiRoute, notThere } from "../api-route.ts";
import { valueRoutes } from "../value-routes.ts";

const group = "ways to people";
const all = "/people/{personId}/channels";
const single = `${all}/{channelId}`;

const Channel = z.object({
  id: z.string(),
  kind: z.enum(["mail", "push", "webhook", "calendar"]),
  address: z.string().describe("Of a device its name, of a calendar the address to subscribe to."),
  secret: z.string().nullable().describe("By which a called program knows the house; else null."),
  kinds: z.array(z.enum(MESSAGE_KINDS)),
});

const Kinds = z.strictObject({
  kinds: z
    .array(z.enum(MESSAGE_KINDS))
    .max(MESSAGE_KINDS.length)
    .describe("What comes by this way; nothing when empty."),
});

/** The ways to one person; a test goes by `/ways`. */
export const channelRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: all,
    id: "listChannels",
    group,
    summary: "The ways to one person",
    answer: z.object({ items: z.array(Channel) }),
    faults: [404],
    async handle({ context, params }) {
      if (!(await context.store.people.get(params.personId!))) return notThere("person");
      const own = (await context.store.channels.list()).filter(
        ({ personId }) => personId === params.personId,
      );
      return { body: { items: own.map((channel) => shown(channel, context)) } };
    },
  },
  {
    method: "POST",
    path: all,
    id: "addChannel",
    group,
    summary: "Adds a way to one person; everything comes by it until that is changed",
    body: NewChannelSchema,
    answer: Channel,
    answerStatus: 201,
    faults: [404],
    async handle({ context, params, body }) {
      if (!(await context.store.people.get(params.personId!))) return notThere("person");
      const channel = newChannel(body, params.personId!);
      await context.store.channels.put(channel);
      return { body: shown(channel, context) };
    },
  },
  ...valueRoutes({
    path: `${single}/kinds`,
    name: "ChannelKinds",
    group,
    one: "way",
    schema: Kinds,
    reads: "What comes by a way",
    changes: "Changes what comes by a way",
    async read(queries, call) {
      const channel = await channelOf(queries, call);
      return channel && { kinds: channel.kinds };
    },
    async write(queries, { kinds }, call) {
      const channel = await channelOf(queries, call);
      const chosen = MESSAGE_KINDS.filter((kind) => kinds.includes(kind));
      if (channel) await queries.channels.put({ ...channel, kinds: chosen });
    },
  }),
  {
    method: "POST",
    path: `${single}/renew`,
    id: "renewChannel",
    group,
    summary: "Gives a calendar another address; the one before ends",
    answer: Channel,
    faults: [404, 409],
    async handle(call) {
      const { store } = call.context;
      const channel = await channelOf(store, call);
      if (!channel) return notThere("way");
      if (channel.kind !== "calendar") return NO_CALENDAR;
      const renewed = { ...channel, secret: newSecret() };
      await store.channels.put(renewed);
      return { body: shown(renewed, call.context) };
    },
  },
  {
    method: "DELETE",
    path: single,
    id: "removeChannel",
    group,
    summary: "Removes a way",
    answerStatus: 204,
    faults: [404],
    async handle(call) {
      const channel = await channelOf(call.context.store, call);
      if (!channel) return notThere("way");
      await call.context.store.channels.remove(channel.id);
      return {};
    },
  },
];

const NO_CALENDAR = {
  status: 409,
  code: "no-calendar",
  detail: "Only a calendar's address can be renewed. Remove this way and add it anew.",
} as const;

async function channelOf(
  { channels }: StoreQueries,
  { params }: ApiCall,
): Promise<StoredChannel | undefined> {
  const channel = await channels.get(params.channelId!);
  return channel?.personId === params.personId ? channel : undefined;
}

/** Keys of a browser's subscription stay in the house. */
function shown(channel: StoredChannel, { post }: PageContext): z.output<typeof Channel> {
  const { id, kind, kinds } = channel;
  const secret = channel.kind === "webhook" ? channel.secret : null;
  return { id, kind, kinds, secret, address: shownAddress(channel, post.signing.publicUrl) };
}
