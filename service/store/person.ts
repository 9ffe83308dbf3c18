import { z } from "zod";
import { UNITS } from "../environment-schema.ts";

/** What a message is about; each person chooses for each way which kinds come by it. */
export const MESSAGE_KINDS = ["morning", "amendment", "weekly", "trouble"] as const;
export type MessageKind = (typeof MESSAGE_KINDS)[number];

const Hour = z.number().min(0).max(24);

export const PersonSchema = z.object({
  id: z.string().min(1),
  name: z.string().min(1),
  /** BCP 47, with hours and numerals as its own extensions. */
  locale: z.string(),
  units: z.enum(UNITS),
  /** Local clock of the site between which nothing rings, hours from midnight; may run over midnight. */
  quiet: z.object({ fromHour: Hour, toHour: Hour }).nullable(),
});
export type Person = z.output<typeof PersonSchema>;
export type QuietHours = NonNullable<Person["quiet"]>;

const EVERY_CHANNEL = {
  /** Stands in message ids and logs, so it shows neither address nor person. */
  id: z.string().regex(/^[a-z]+-[0-9a-f]{12}$/),
  personId: z.string().min(1),
  kinds: z.array(z.enum(MESSAGE_KINDS)),
};

/** One way to a person, as kept. */
export const StoredChannelSchema = z.discriminatedUnion("kind", [
  z.object({ ...EVERY_CHANNEL, kind: z.literal("mail"), address: z.string() }),
  z.object({
    ...EVERY_CHANNEL,
    kind: z.literal("push"),
    /** As the browser gave it: RFC 8030 address, RFC 8291 keys in base64url. */
    endpoint: z.url(),
    p256dh: z.string(),
    auth: z.string(),
    device: z.string(),
  }),
  z.object({ ...EVERY_CHANNEL, kind: z.literal("webhook"), url: z.url(), secret: z.string() }),
  z.object({ ...EVERY_CHANNEL, kind: z.literal("calendar"), secret: z.string() }),
]);
export type StoredChannel = z.output<typeof StoredChannelSchema>;
export type ChannelKind = StoredChannel["kind"];
export type StoredChannelOf<K extends ChannelKind> = Extract<StoredChannel, { kind: K }>;
