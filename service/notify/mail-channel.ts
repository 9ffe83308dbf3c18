import { createTransport } from "nodemailer";
import type { MailSettings } from "../config.ts";
import type { Message } from "../store/outbox-store.ts";
import type { Channel, Delivery } from "./channel.ts";

const CONNECT_WAIT_MS = 10_000;
const ANSWER_WAIT_MS = 30_000;

/** Mail through the owner's own server. The message's id becomes its Message-ID, so that a repeat is seen as one. */
export function mailChannel(settings: MailSettings): Channel {
  const transport = createTransport({
    url: settings.smtpUrl,
    connectionTimeout: CONNECT_WAIT_MS,
    greetingTimeout: CONNECT_WAIT_MS,
    socketTimeout: ANSWER_WAIT_MS,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  return {
    name: "mail",
    async deliver(message): Promise<Delivery> {
      try {
        await transport.sendMail(mailOf(message, settings));
        return { ok: true };
      } catch (error) {
        return { ok: false, fault: faultOf(error) };
      }
    },
    close: () => transport.close(),
  };
}

function mailOf(message: Message, { from, to }: MailSettings) {
  return {
    from,
    to: [...to],
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
