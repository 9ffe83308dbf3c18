import { randomBytes } from "node:crypto";
import { z } from "zod";
import type { ChannelKind, StoredChannel } from "../../store/person.ts";
import { type FormRead, readForm, type Typed } from "../forms/form-problems.ts";
import { neededText } from "../forms/typed-fields.ts";

const MailForm = z.object({
  address: z
    .string("missing")
    .trim()
    .regex(/^[^\s@<>,;]+@[^\s@<>,;]+$/, "not-a-mail-address"),
});
const WebhookForm = z.object({
  url: z.string("missing").trim().refine(isWebAddress, { error: "not-a-web-address" }),
});
const base64url = z.string().regex(/^[\w-]+$/, "missing");
const PushForm = z.object({
  endpoint: z
    .string("missing")
    .refine((text) => isWebAddress(text) && text.startsWith("https:"), { error: "missing" }),
  p256dh: base64url,
  auth: base64url,
  device: neededText(80),
});

/** A new way to a person from the form of its kind; everything comes by it until that is changed. */
export function channelOfForm(kind: ChannelKind, typed: Typed, personId: string): FormRead<StoredChannel> {
  const common = { id: `${kind}-${randomBytes(6).toString("hex")}`, personId };
  const told = { ...common, kinds: ["morning", "amendment", "weekly", "trouble"] as StoredChannel["kinds"] };
  switch (kind) {
    case "mail":
      return withValue(readForm(MailForm, typed), ({ address }) => ({ ...told, kind, address }));
    case "webhook":
      return withValue(readForm(WebhookForm, typed), ({ url }) => ({
        ...told,
        kind,
        url,
        secret: newSecret(),
      }));
    case "push":
      return withValue(readForm(PushForm, typed), (given) => ({ ...told, kind, ...given }));
    case "calendar":
      return { ok: true, value: { ...told, kind, secret: newSecret() } };
  }
}

const SECRET_BYTES = 24;

export function newSecret(): string {
  return randomBytes(SECRET_BYTES).toString("base64url");
}

function withValue<A, B>(read: FormRead<A>, make: (value: A) => B): FormRead<B> {
  return read.ok ? { ok: true, value: make(read.value) } : read;
}

/** Name and password do not belong into an address: they would stand in every log on the way. */
function isWebAddress(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const { protocol, username, password } = new URL(text);
  return /^https?:$/.test(protocol) && username === "" && password === "";
}
