import { once } from "node:events";
import { createServer } from "node:net";
import { describe, expect, it, onTestFinished } from "vitest";
import { mailChannel, mailLine, mailName } from "../../../service/notify/mail-channel.ts";
import { messageFaultOf } from "../../../service/notify/message-fault.ts";
import type { Message } from "../../../service/store/outbox-store.ts";
import { selfSigned } from "../feed/self-signed.ts";
import { postOffice } from "./post-office.ts";

const CREATED = Date.parse("2031-05-02T04:00:00Z");

function message(over: Partial<Message> = {}): Message {
  return {
    id: "2031-05-02.morning.mail.0123456789abcdef",
    siteId: "yard",
    planId: 1,
    channel: "mail",
    subject: "Friday 2 May at Yard",
    body: "Water the lemon: 500 ml.\n\nKeep the Wüstenrose dry.\n",
    createdUtcMs: CREATED,
    keepTryingUntilUtcMs: CREATED + 1,
    state: "waiting",
    tries: 0,
    nextTryUtcMs: CREATED,
    settledUtcMs: null,
    lastFault: null,
    ...over,
  };
}

const FROM = "Bench <bench@host.example>";

function channelTo(smtpUrl: string, over: { to?: string; stopAddress?: string; ca?: string } = {}) {
  const { to = "a@host.example", stopAddress = null, ca } = over;
  const line = mailLine({ smtpUrl, from: FROM, to: [] }, { answerWaitMs: 700, ...(ca ? { ca } : {}) });
  onTestFinished(() => line.close());
  return mailChannel(line, { name: mailName(to), to, stopAddress });
}

describe("the mail channel", () => {
  it("brings the brief as text and, where it has one, as HTML beside it", async () => {
    const office = await postOffice();
    const channel = channelTo(office.url);
    expect(await channel.deliver(message())).toEqual({ ok: true });
    const [mail] = office.received;
    expect(mail?.subject).toBe("Friday 2 May at Yard");
    expect(mail?.text?.trim()).toBe("Water the lemon: 500 ml.\n\nKeep the Wüstenrose dry.");
    expect(mail?.html).toBe(false);
    expect(mail?.from?.text).toBe('"Bench" <bench@host.example>');
    expect(office.recipients).toEqual([["a@host.example"]]);
    expect(mail?.date?.getTime()).toBe(CREATED);
    // RFC 3834 section 5: so that no holiday responder answers.
    expect(mail?.headers.get("auto-submitted")).toBe("auto-generated");
    const extra = JSON.stringify({ html: "<p>Wüstenrose</p>", calendar: null });
    await channel.deliver(message({ extra }));
    expect(office.received[1]?.html).toBe("<p>Wüstenrose</p>");
    expect(office.received[1]?.text?.trim()).toMatch(/^Water the lemon/);
    expect(office.received[1]?.attachments).toEqual([]);
  });

  it("serves each address by itself under a name that does not show it", async () => {
    const office = await postOffice();
    const channels = ["a@host.example", "Bea <b@host.example>"].map((to) => channelTo(office.url, { to }));
    for (const channel of channels) await channel.deliver(message());
    expect(office.recipients).toEqual([["a@host.example"], ["b@host.example"]]);
    expect(office.received.map(({ to }) => (Array.isArray(to) ? "" : to?.text))).toEqual([
      "a@host.example",
      '"Bea" <b@host.example>',
    ]);
    expect(new Set(channels.map(({ name }) => name)).size).toBe(2);
    for (const { name } of channels) expect(name).toMatch(/^mail-[0-9a-f]{8}$/);
  });

  it("gives a repeated delivery the same Message-ID, and another message another", async () => {
    const office = await postOffice();
    const channel = channelTo(office.url);
    await channel.deliver(message());
    await channel.deliver(message());
    await channel.deliver(message({ id: "2031-05-03.morning.mail.0123456789abcdef" }));
    const ids = office.received.map(({ messageId }) => messageId);
    // RFC 5322 section 3.6.4: dot-atom on both sides of one @, in angle brackets.
    for (const id of ids) expect(id).toMatch(/^<[A-Za-z0-9.-]+@[A-Za-z0-9.-]+>$/);
    expect(ids[1]).toBe(ids[0]);
    expect(ids[2]).not.toBe(ids[0]);
  });

  it("tells mail programs how to stop it, by one click only over a safe address", async () => {
    const office = await postOffice();
    await channelTo(office.url, { stopAddress: "https://bench.example/stop-mail/x.y" }).deliver(message());
    await channelTo(office.url, { stopAddress: "http://bench.example/stop-mail/x.y" }).deliver(message());
    await channelTo(office.url).deliver(message());
    const header = (index: number, name: string) =>
      office.received[index]?.headerLines.find(({ key }) => key === name)?.line;
    // RFC 2369 section 3.2 and RFC 8058 section 3.1.
    expect(header(0, "list-unsubscribe")).toBe("List-Unsubscribe: <https://bench.example/stop-mail/x.y>");
    expect(header(0, "list-unsubscribe-post")).toBe("List-Unsubscribe-Post: List-Unsubscribe=One-Click");
    expect(header(1, "list-unsubscribe")).toContain("<http://bench.example/");
    expect(header(1, "list-unsubscribe-post")).toBeUndefined();
    expect(header(2, "list-unsubscribe")).toBeUndefined();
  });

  it("says why a server did not take it, without repeating what the server said", async () => {
    const office = await postOffice();
    office.answers.push(451, 550);
    const channel = channelTo(office.url);
    const faults = [await channel.deliver(message()), await channel.deliver(message())];
    expect(faults).toEqual([
      { ok: false, fault: "mail-emessage-451" },
      { ok: false, fault: "mail-emessage-550", final: true },
    ]);
    expect(await channel.deliver(message())).toEqual({ ok: true });
  });

  it("does not go on asking a server that refuses the recipient for good", async () => {
    const office = await postOffice({
      onRcptTo: (_address, _session, done) =>
        done(Object.assign(new Error("no such user a@host.example"), { responseCode: 550 })),
    });
    const refused = await channelTo(office.url).deliver(message());
    expect(refused).toEqual({ ok: false, fault: "mail-eenvelope-550", final: true });
  });

  it("tries again later where the answer to the message is lost", async () => {
    const office = await postOffice();
    office.answers.push(0);
    const channel = channelTo(office.url);
    expect(await channel.deliver(message())).toEqual({ ok: false, fault: "mail-etimedout" });
    expect(await channel.deliver(message())).toEqual({ ok: true });
    expect(office.received[1]?.messageId).toBe(office.received[0]?.messageId);
  });

  it("says that the server is not there, or refuses the password", async () => {
    const nobody = createServer().listen(0, "127.0.0.1");
    await once(nobody, "listening");
    const { port } = nobody.address() as { port: number };
    nobody.close();
    expect(await channelTo(`smtp://127.0.0.1:${port}`).deliver(message())).toMatchObject({ ok: false });
    const strict = await postOffice({
      authOptional: false,
      allowInsecureAuth: true,
      onAuth: (_auth, _session, done) => done(new Error("no")),
    });
    const withPassword = strict.url.replace("//", "//me:wrong-word@");
    const delivery = await channelTo(withPassword).deliver(message());
    expect(delivery).toEqual({ ok: false, fault: "mail-eauth-535" });
  });

  it("goes over to TLS before it tells name and password, and trusts no unknown certificate", async () => {
    const { key, cert } = selfSigned();
    const told: unknown[] = [];
    const office = await postOffice({
      key,
      cert,
      authOptional: false,
      disabledCommands: [],
      onAuth: ({ username, password }, session, done) => {
        told.push([username, password, session.secure]);
        done(null, { user: username });
      },
    });
    const url = office.url.replace("//", "//me:the-word@");
    const unsafe = await channelTo(url).deliver(message());
    expect(unsafe).toMatchObject({ ok: false });
    expect(messageFaultOf((unsafe as { fault: string }).fault)).toBe("mail-unsafe");
    expect(told).toEqual([]);
    expect(await channelTo(url, { ca: cert }).deliver(message())).toEqual({ ok: true });
    expect(told).toEqual([["me", "the-word", true]]);
    expect(office.secure).toEqual([true]);
  });

  it("lets nobody add headers or addresses through a name", async () => {
    const office = await postOffice();
    const subject = "Yard\r\nBcc: thief@host.example\r\n\r\nfree text";
    expect(await channelTo(office.url).deliver(message({ subject }))).toEqual({ ok: true });
    expect(office.recipients[0]).toEqual(["a@host.example"]);
    expect(office.received[0]?.headers.has("bcc")).toBe(false);
    expect(office.received[0]?.text?.trim()).toMatch(/^Water the lemon/);
  });
});
