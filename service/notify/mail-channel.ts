import { createHash } from "node:crypto";
import { createTransport } from "nodemailer";
import type { MailSettings } from "../config.ts";
import type { Message } from "../store/outbox-store.ts";
import type { Channel, Delivery } from "./channel.ts";

const CONNECT_WAIT_MS = 10_000;
const ANSWER_WAIT_MS = 30_000;

/**
 * Mail through the owner's own server, one channel an address: each is delivered and retried by itself, and nobody sees
 * another's. The message's id becomes its Message-ID, so that a repeat is seen as one.
 */
export function mailChannels(settings: MailSettings): Channel[] {
  const transport = createTransport({
    url: settings.smtpUrl,
    connectionTimeout: CONNECT_WAIT_MS,
    greetingTimeout: CONNECT_WAIT_MS,
    socketTimeout: ANSWER_WAIT_MS,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  return settings.to.map((to) => ({
    name: channelName(to),
    to,
    async deliver(message): Promise<Delivery> {
      try {
        await transport.sendMail(mailOf(message, { from: settings.from, to }));
        return { ok: true };
      } catch (error) {
        return { ok: false, fault: faultOf(error) };
      }
    },
    close: () => transport.close(),
  }));
}

/** Stands in the store, in logs and in message ids, so it must not show the address. */
function channelName(to: string): string {
  return `mail-${createHash("sha256").update(to.toLowerCase()).digest("hex").slice(0, 8)}`;
}

function mailOf(message: Message, { from, to }: { from: string; to: string }) {
  return {
    from,
    to,
    subject: message.subject,
    text: message.body,
    messageId: `<${message.id}@leebench.invalid>`,
    date: new Date(message.createdUtcMs),
    headers: { "Auto-Submitted": "auto-generated" },
  };
}

/** Code and the server's number only: its text may repeat addresses. */
function faultOf(error: unknown): string {
  const { code, responseCode } = error as { code?: string; responseCode?: number };
  return ["mail", code?.toLowerCase() ?? "failed", responseCode]
    .filter((part) => part !== undefined)
    .join("-");
}
