import { once } from "node:events";
import { type AddressInfo, createServer } from "node:net";
import { Aedes } from "aedes";
import { connectAsync } from "mqtt";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { openBroker } from "../../../service/broker/broker-line.ts";
import { brokerRule } from "../../../service/broker/broker-stream.ts";
import { deliverDue } from "../../../service/notify/deliver-due.ts";
import { messageFaultOf } from "../../../service/notify/message-fault.ts";
import { planMessages } from "../../../service/notify/plan-messages.ts";
import type { TargetRule } from "../../../service/outgoing/target-check.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { house } from "../jobs/bench-jobs.ts";
import { wayBy } from "../notify/fixed-post.ts";
import { barePlan } from "../store/bare-plan.ts";

const NOTHING_NAMED: TargetRule = { allowedHosts: [] };

/** A real broker on loopback that can be stopped and started again on the same port. */
async function startBroker(port = 0, authenticate?: (password: string) => boolean) {
  const broker = await Aedes.createBroker({
    ...(authenticate
      ? {
          authenticate: (_client, _user, password, done) =>
            authenticate(String(password))
              ? done(null, true)
              : done(Object.assign(new Error("no"), { returnCode: 4 }), false),
        }
      : {}),
  });
  let callers = 0;
  const server = createServer((socket) => {
    callers++;
    broker.handle(socket);
  });
  server.listen(port, "127.0.0.1");
  await once(server, "listening");
  const close = async () => {
    await new Promise<void>((closed) => broker.close(() => closed()));
    await new Promise<void>((closed) => server.close(() => closed()));
  };
  return { port: (server.address() as AddressInfo).port, close, callers: () => callers };
}

async function lineTo(
  port: number,
  { login = "", host = "127.0.0.1", version = "3.1.1" as "3.1.1" | "5", outgoing = NOTHING_NAMED } = {},
) {
  const made = await house();
  const { store, clock, parts } = made;
  const settings = { url: `mqtt://${login}${host}:${port}`, topic: "bench", version };
  const { log, now } = parts;
  const line = await openBroker({ settings, store, log, now, outgoing, reconnectMs: 100 });
  onTestFinished(() => line.close());
  const way = wayBy(line.channel);
  const plan = barePlan({
    nowUtcMs: clock.nowUtcMs,
    deeds: [{ potId: "p1", action: "water", amountMl: 500 }],
  });
  const { signing } = parts.post;
  const collection = await store.collection("yard");
  const of = { plan, collection, ways: [way], signing, houseId: store.houseId, nowUtcMs: clock.nowUtcMs };
  await store.outbox.add(planMessages({ ...of, amendment: null }));
  const deliver = async (minutes = 0) => {
    clock.nowUtcMs += minutes * 60_000;
    await deliverDue({ ...parts, ways: [way] });
    return (await store.outbox.list("yard"))[0]!;
  };
  const connected = () =>
    vi.waitFor(() => expect(made.logged).toContainEqual({ event: "broker-connected" }), 5000);
  return { ...made, deliver, connected };
}

describe("the message broker", () => {
  it("gets the plan, kept for whoever comes later", async () => {
    const broker = await startBroker();
    onTestFinished(broker.close);
    const { deliver, connected } = await lineTo(broker.port);
    await connected();
    expect(await deliver()).toMatchObject({ state: "sent" });
    const reader = await connectAsync(`mqtt://127.0.0.1:${broker.port}`);
    const arrived = new Promise<[string, Buffer]>((take) =>
      reader.once("message", (on, body) => take([on, body])),
    );
    await reader.subscribeAsync("bench/#");
    const [topic, payload] = await arrived;
    await reader.endAsync(true);
    expect(topic).toBe("bench/yard/plan");
    expect(JSON.parse(String(payload))).toMatchObject({
      kind: "morning",
      deeds: [{ potId: "p1", amountMl: 500 }],
    });
  });

  it("that restarts gets the plan at the next try, once, and readings go on", async () => {
    const first = await startBroker();
    const { deliver, connected, logged, store } = await lineTo(first.port);
    await connected();
    await first.close();
    expect(await deliver()).toMatchObject({ state: "waiting", lastFault: "mqtt-unreachable" });
    logged.length = 0;
    const second = await startBroker(first.port);
    onTestFinished(second.close);
    await connected();
    expect(await deliver(1)).toMatchObject({ state: "sent" });
    const probe = await connectAsync(`mqtt://127.0.0.1:${second.port}`);
    await vi.waitFor(async () => {
      await probe.publishAsync("bench/readings/p1/weight-kg", "9.4", { qos: 1 });
      expect((await store.journal.list("yard")).at(-1)?.body).toEqual({ kind: "weighed", massKg: 9.4 });
    }, 5000);
    // Spoken every moment, entered once an hour.
    await probe.publishAsync("bench/readings/Lemon/weight-kg", '{"value": 9.1}', { qos: 1 });
    await probe.publishAsync("bench/readings/p1/moisture-percent", "12", { qos: 1 });
    await probe.publishAsync("bench/readings/nobody/weight-kg", "5", { qos: 1 });
    await vi.waitFor(
      () => expect(logged).toContainEqual(expect.objectContaining({ event: "reading-not-used" })),
      5000,
    );
    await probe.endAsync(true);
    const bodies = (await store.journal.list("yard")).slice(1).map(({ body }) => body);
    expect(bodies).toEqual([
      { kind: "weighed", massKg: 9.4 },
      { kind: "checked", feel: "light" },
    ]);
  });

  it("that does not let the house in is told apart from one that is not there", async () => {
    const broker = await startBroker(0, (password) => password === "right");
    onTestFinished(broker.close);
    const { deliver, logged } = await lineTo(broker.port, { login: "bench:wrong@" });
    await vi.waitFor(
      () => expect(logged).toContainEqual(expect.objectContaining({ event: "broker-trouble" })),
      5000,
    );
    expect(await deliver()).toMatchObject({ state: "waiting", lastFault: "mqtt-refused" });
    expect(JSON.stringify(logged)).not.toContain("wrong");
  });
});

describe("the broker's host", () => {
  /** Whoever answers for the names of the world says that this one is at home. */
  const rebound = (allowedHosts: readonly string[] = []) => {
    const asked: string[] = [];
    const lookUp = async (host: string) => {
      asked.push(host);
      return [{ address: "127.0.0.1" }];
    };
    return { asked, outgoing: { allowedHosts, lookUp } };
  };

  it("under a name that could lead anywhere is not called inside, and the grower reads how to allow it", async () => {
    const broker = await startBroker();
    onTestFinished(broker.close);
    const { outgoing } = rebound();
    const { deliver, logged } = await lineTo(broker.port, { host: "broker.invalid", outgoing });
    await vi.waitFor(
      () => expect(logged).toContainEqual({ event: "broker-trouble", code: "target-in-own-network" }),
      5000,
    );
    const { state, lastFault } = await deliver();
    expect([state, lastFault]).toEqual(["waiting", "mqtt-own-network"]);
    const said = wordsFor("en", "metric").say(`fault.${messageFaultOf(lastFault ?? "")}`);
    expect(said).toContain("Name its host in LEEBENCH_PRIVATE_TARGETS");
    expect(broker.callers()).toBe(0);
  });

  it("is called where the owner named it, under the address that was looked at, once a connection", async () => {
    const broker = await startBroker();
    onTestFinished(broker.close);
    const { asked, outgoing } = rebound(["Broker.invalid"]);
    const { deliver, connected } = await lineTo(broker.port, { host: "broker.invalid", outgoing });
    await connected();
    expect(await deliver()).toMatchObject({ state: "sent" });
    expect(asked).toEqual(["broker.invalid"]);
  });

  it("needs no naming where only the own network can be meant, as set-ups did before", async () => {
    const broker = await startBroker();
    onTestFinished(broker.close);
    const { deliver, connected } = await lineTo(broker.port, {
      host: "localhost",
      outgoing: rebound().outgoing,
    });
    await connected();
    expect(await deliver()).toMatchObject({ state: "sent" });
    const allowed = (url: string) => brokerRule(new URL(url), NOTHING_NAMED).allowedHosts;
    for (const host of ["192.168.1.5", "[fd00::5]", "broker", "broker.local"])
      expect(allowed(`mqtt://${host}:1883`)).toEqual([host]);
    expect(allowed("mqtts://broker.invalid")).toEqual([]);
  });

  it("is never an address under which no service can be", async () => {
    const { logged } = await lineTo(1883, { host: "0.0.0.0" });
    await vi.waitFor(
      () => expect(logged).toContainEqual({ event: "broker-trouble", code: "target-not-callable" }),
      5000,
    );
  });
});
