import { describe, expect, it, onTestFinished } from "vitest";
import { deliverDue } from "../../../service/notify/deliver-due.ts";
import { mailChannel, mailLine } from "../../../service/notify/mail-channel.ts";
import type { Way } from "../../../service/notify/way.ts";
import { house } from "../jobs/bench-jobs.ts";
import { wayBy } from "./fixed-post.ts";
import { postOffice } from "./post-office.ts";

const MINUTE_MS = 60_000;

/** One message on its way to a real server on loopback, the clock in the test's hands. */
async function onItsWay(over: Partial<Way> = {}) {
  const office = await postOffice();
  const made = await house();
  const { store, clock, parts } = made;
  const smtp = { smtpUrl: office.url, from: "bench@host.example", to: [] };
  const line = mailLine(smtp, { answerWaitMs: 500 });
  onTestFinished(() => line.close());
  const channel = mailChannel(line, { name: "mail-1", to: "a@host.example", stopAddress: null });
  const createdUtcMs = clock.nowUtcMs;
  const message = { id: "2031-05-02.morning.mail-1.00", siteId: "yard", planId: null, channel: "mail-1" };
  const keepTryingUntilUtcMs = createdUtcMs + 23 * 60 * MINUTE_MS;
  await store.outbox.add([{ ...message, subject: "s", body: "b", createdUtcMs, keepTryingUntilUtcMs }]);
  const deliverAfter = async (minutes: number) => {
    clock.nowUtcMs += minutes * MINUTE_MS;
    await deliverDue({ ...parts, ways: [wayBy(channel, over)] });
    return (await store.outbox.list("yard"))[0]!;
  };
  return { office, deliverAfter };
}

describe("a mail", () => {
  it("that a server greylists arrives once, at the next try (RFC 6647 section 2)", async () => {
    const { office, deliverAfter } = await onItsWay();
    office.answers.push(451);
    expect(await deliverAfter(0)).toMatchObject({ state: "waiting", lastFault: "mail-emessage-451" });
    expect(await deliverAfter(1)).toMatchObject({ state: "sent" });
    await deliverAfter(5);
    expect(office.received).toHaveLength(1);
  });

  it("whose answer is lost comes again under the same Message-ID, and then no more", async () => {
    const { office, deliverAfter } = await onItsWay();
    office.answers.push(0);
    expect(await deliverAfter(0)).toMatchObject({ state: "waiting", lastFault: "mail-etimedout" });
    expect(await deliverAfter(1)).toMatchObject({ state: "sent" });
    await deliverAfter(5);
    expect(office.received.map(({ messageId }) => messageId)).toEqual([
      "<2031-05-02.morning.mail-1.00@leebench.invalid>",
      "<2031-05-02.morning.mail-1.00@leebench.invalid>",
    ]);
  });

  it("that is refused for good is given up at once, for the status page to tell", async () => {
    const { office, deliverAfter } = await onItsWay();
    office.answers.push(550);
    expect(await deliverAfter(0)).toMatchObject({ state: "given-up", lastFault: "mail-emessage-550" });
    await deliverAfter(60);
    expect(office.received).toHaveLength(0);
  });

  it("that falls into quiet hours goes when they are over, and not before", async () => {
    // 05:30 at the site.
    const { office, deliverAfter } = await onItsWay({ quiet: { fromHour: 21, toHour: 6.25 } });
    expect(await deliverAfter(0)).toMatchObject({ state: "waiting", tries: 0 });
    expect(await deliverAfter(44)).toMatchObject({ state: "waiting", tries: 0 });
    expect(office.received).toHaveLength(0);
    expect(await deliverAfter(1)).toMatchObject({ state: "sent" });
    expect(office.received).toHaveLength(1);
  });
});
