import { randomBytes } from "node:crypto";
import { z } from "zod";
import { type ChannelKind, MESSAGE_KINDS, type StoredChannel } from "../../store/person.ts";
import { type FormRead, readForm, type Typed } from "../forms/form-problems.ts";
import { neededText } from "../forms/typed-fields.ts";

const Mail = z.object({
  address: z
    .string("missing")
    .trim()
    .max(254, "not-a-mail-address")
    .regex(/^[^\s@<>,;]+@[^\s@<>,;]+$/, "not-a-mail-address"),
});
const Webhook = z.object({
  url: z.string("missing").trim().max(2000).refine(isWebAddress, { error: "not-a-web-address" }),
});
const base64url = z
  .string()
  .max(500)
  .regex(/^[\w-]+$/, "missing");
const Push = z.object({
  endpoint: z
    .string("missing")
    .max(2000)
    .refine((text) => isWebAddress(text) && text.startsWith("https:"), { error: "missing" }),
  p256dh: base64url,
  auth: base64url,
  device: neededText(80),
});

/** What has to be said of a new way, by its kind. */
export const NewChannelSchema = z.discriminatedUnion("kind", [
  Mail.extend({ kind: z.literal("mail") }),
  Webhook.extend({ kind: z.literal("webhook") }),
  Push.extend({ kind: z.literal("push") }).describe("As the browser gives its subscription."),
  z.object({ kind: z.literal("calendar") }),
]);

/** A new way to a person from the form of its kind. */
export function channelOfForm(kind: ChannelKind, typed: Typed, personId: string): FormRead<StoredChannel> {
  const read = readForm(NewChannelSchema, { ...typed, kind });
  return read.ok ? { ok: true, value: newChannel(read.value, personId) } : read;
}

/** A new way to a person; everything comes by it until that is changed. */
export function newChannel(given: z.output<typeof NewChannelSchema>, personId: string): StoredChannel {
  const id = `${given.kind}-${randomBytes(6).toString("hex")}`;
  const told = { id, personId, kinds: [...MESSAGE_KINDS] };
  const hasSecret = given.kind === "webhook" || given.kind === "calendar";
  return { ...told, ...given, ...(hasSecret ? { secret: newSecret() } : {}) } as StoredChannel;
}

const SECRET_BYTES = 24;

export function newSecret(): string {
  return randomBytes(SECRET_BYTES).toString("base64url");
}

/** Name and password do not belong into an address: they would stand in every log on the way. */
function isWebAddress(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const { protocol, username, password } = new URL(text);
  return /^https?:$/.test(protocol) && username === "" && password === "";
}
