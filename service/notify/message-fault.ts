/** Why a message did not get through, as far as the grower can do something about it. */
export const MESSAGE_FAULTS = [
  "channel-not-set-up",
  "channel-broke",
  "mail-not-set-up",
  "mail-unreachable",
  "mail-unsafe",
  "mail-login",
  "mail-address",
  "mail-busy",
  "mail-refused",
  "mail-failed",
  "push-gone",
  "push-unreachable",
  "push-refused",
  "push-busy",
  "webhook-unreachable",
  "webhook-own-network",
  "webhook-unknown-host",
  "webhook-redirected",
  "webhook-busy",
  "webhook-refused",
  "mqtt-unreachable",
  "mqtt-refused",
  "mqtt-own-network",
] as const;

export type MessageFault = (typeof MESSAGE_FAULTS)[number];

/** By the code that the mail library gives, in small letters. */
const OF_MAIL_CODE: Readonly<Record<string, MessageFault>> = {
  econnection: "mail-unreachable",
  etimedout: "mail-unreachable",
  esocket: "mail-unreachable",
  edns: "mail-unreachable",
  eproxy: "mail-unreachable",
  etls: "mail-unsafe",
  erequiretls: "mail-unsafe",
  eauth: "mail-login",
  enoauth: "mail-login",
  eoauth2: "mail-login",
  eenvelope: "mail-address",
  emaxrecipients: "mail-address",
  emessage: "mail-refused",
};

/** The kind of what a channel noted: its own code, or "mail-", the library's code and the server's number. */
export function messageFaultOf(fault: string): MessageFault {
  const known = MESSAGE_FAULTS.find((one) => one === fault);
  if (known) return known;
  const [, code = "", status = ""] = /^mail-([a-z0-9]+)(?:-(\d{3}))?$/.exec(fault) ?? [];
  if (code === "") return "channel-broke";
  // RFC 5321, 4.2.1: 4yz is a refusal for now.
  if (status.startsWith("4")) return "mail-busy";
  return OF_MAIL_CODE[code] ?? "mail-failed";
}
