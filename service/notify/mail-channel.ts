import { createHash } from "node:crypto";
import { createRequire } from "node:module";
import type { Transporter } from "nodemailer";
import { z } from "zod";
import { briefHtml } from "../brief/brief-html.tsx";
import type { MailSettings } from "../config.ts";
import { isLoopbackHost } from "../loopback.ts";
import type { Message } from "../store/outbox-store.ts";
import { calendarOfDay } from "./calendar-text.ts";
import type { Channel, Delivery } from "./channel.ts";
import type { MessageContent } from "./message-content.ts";

const CONNECT_WAIT_MS = 10_000;
const ANSWER_WAIT_MS = 30_000;

/** The line to the owner's own mail server. */
export interface MailLine {
  /** Made with the first mail, and the library is read with it. */
  readonly transport: Transporter;
  readonly from: string;
  close(): void;
}

type Mailer = Pick<typeof import("nodemailer"), "createTransport">;

interface LineOptions {
  readonly answerWaitMs?: number;
  readonly ca?: string;
}

export function mailLine(settings: MailSettings, options: LineOptions = {}): MailLine {
  let made: Transporter | undefined;
  return {
    get transport() {
      made ??= transportTo(settings, options);
      return made;
    },
    from: settings.from,
    close: () => made?.close(),
  };
}

function transportTo(
  settings: MailSettings,
  { answerWaitMs = ANSWER_WAIT_MS, ca }: LineOptions,
): Transporter {
  const { createTransport } = createRequire(import.meta.url)("nodemailer") as Mailer;
  return createTransport({
    url: settings.smtpUrl,
    connectionTimeout: CONNECT_WAIT_MS,
    greetingTimeout: CONNECT_WAIT_MS,
    socketTimeout: answerWaitMs,
    disableFileAccess: true,
    disableUrlAccess: true,
    requireTLS: needsTls(new URL(settings.smtpUrl)),
    ...(ca === undefined ? {} : { tls: { ca } }),
  });
}

/** A name and password leave this machine over TLS only, also where the server, or somebody between, offers none. */
function needsTls({ username, hostname }: URL): boolean {
  return username !== "" && !isLoopbackHost(hostname.replace(/^\[|\]$/g, ""));
}

/** What a mail has besides its text. */
const ExtraSchema = z.object({ html: z.string().nullable(), calendar: z.string().nullable() });
const PLAIN = { html: null, calendar: null };

/**
 * Mail to one address, delivered and retried by itself, so that nobody sees another's. The message's id becomes its
 * Message-ID, so that a repeat is seen as one. Without a line every message waits for the owner to set one.
 */
export function mailChannel(
  line: MailLine | null,
  at: { readonly name: string; readonly to: string; readonly stopAddress: string | null },
): Channel {
  const { name, to, stopAddress } = at;
  return {
    name,
    to,
    sort: "mail",
    extraOf: mailExtra,
    async deliver(message): Promise<Delivery> {
      if (line === null) return { ok: false, fault: "mail-not-set-up" };
      try {
        await line.transport.sendMail(mailOf(message, { from: line.from, to, stopAddress }));
        return { ok: true };
      } catch (error) {
        return faultOf(error);
      }
    },
  };
}

/** Name of a way that is known by its address alone; must not show it, for it stands in logs and message ids. */
export function mailName(to: string): string {
  return `mail-${createHash("sha256").update(to.toLowerCase()).digest("hex").slice(0, 8)}`;
}

function mailExtra({ about, links, words, kind, subject, houseId }: MessageContent): string | null {
  if (about === null) return null;
  const isAmendment = kind === "amendment";
  const brief = isAmendment ? { ...about.brief, title: subject } : about.brief;
  const html = briefHtml(brief, { links, words, changesFirst: isAmendment });
  const calendar = calendarOfDay({ ...about, words, houseId });
  return JSON.stringify({ html, calendar } satisfies z.output<typeof ExtraSchema>);
}

function mailOf(
  message: Message,
  { from, to, stopAddress }: { from: string; to: string; stopAddress: string | null },
) {
  const { html, calendar } = message.extra ? ExtraSchema.parse(JSON.parse(message.extra)) : PLAIN;
  return {
    from,
    to,
    subject: message.subject,
    text: message.body,
    ...(html === null ? {} : { html }),
    ...(calendar === null ? {} : { icalEvent: { method: "PUBLISH", content: calendar } }),
    messageId: `<${message.id}@leebench.invalid>`,
    date: new Date(message.createdUtcMs),
    headers: { "Auto-Submitted": "auto-generated", ...stopHeaders(stopAddress) },
  };
}

/** RFC 2369 section 3.2; one click by RFC 8058 only over https, as that asks. */
function stopHeaders(stopAddress: string | null): Record<string, string> {
  if (stopAddress === null) return {};
  const list = { "List-Unsubscribe": `<${stopAddress}>` };
  return stopAddress.startsWith("https:")
    ? { ...list, "List-Unsubscribe-Post": "List-Unsubscribe=One-Click" }
    : list;
}

/** Code and the server's number only: its text may repeat addresses. RFC 5321 section 4.2.1: 5yz is for good. */
function faultOf(error: unknown): Delivery {
  const {
    responseCode,
    message = "",
    code: given,
  } = error as {
    code?: string;
    responseCode?: number;
    message?: string;
  };
  // The library calls a refused certificate a broken socket.
  const code = given === "ESOCKET" && /certificate|self-signed|TLS|SSL/i.test(message) ? "ETLS" : given;
  const fault = ["mail", code?.toLowerCase() ?? "failed", responseCode]
    .filter((part) => part !== undefined)
    .join("-");
  // A refused password may be set right in the settings, and the message then still goes.
  const isFinal = responseCode !== undefined && responseCode >= 500 && code !== "EAUTH";
  return { ok: false, fault, ...(isFinal ? { final: true } : {}) };
}
