import type { IClientOptions, MqttClient } from "mqtt";
import type { Log } from "../log.ts";
import type { Channel, Delivery } from "../notify/channel.ts";
import { messageData } from "../notify/message-data.ts";
import type { MessageFault } from "../notify/message-fault.ts";
import type { TargetRule } from "../outgoing/target-check.ts";
import type { Store } from "../store/open-store.ts";
import { brokerStream } from "./broker-stream.ts";
import { sensorEntry } from "./sensor-entry.ts";

export interface BrokerSettings {
  /** mqtt:// or mqtts://, with user and password where the broker wants them. */
  readonly url: string;
  /** Everything of ours stands below this topic. */
  readonly topic: string;
  readonly version: "3.1.1" | "5";
}

export interface BrokerLine {
  readonly channel: Channel;
  close(): Promise<void>;
}

interface BrokerInput {
  readonly settings: BrokerSettings;
  readonly store: Store;
  readonly log: Log;
  readonly now: () => number;
  /** Which hosts of the own network may be called. */
  readonly outgoing: TargetRule;
  readonly reconnectMs?: number;
}

export const BROKER_CHANNEL = "mqtt";
const READINGS = ["weight-kg", "moisture-percent"] as const;
const ANSWER_WAIT_MS = 5000;
const RECONNECT_MS = 5000;
/** Protocol levels as the standards number them (MQTT 3.1.1 and 5.0, section 3.1.2.2). */
const LEVELS = { "3.1.1": 4, "5": 5 } as const;
/** "Not authorised" and "bad user name or password" in both versions (section 3.2.2.2). */
const NOT_LET_IN = new Set([4, 5, 0x86, 0x87]);

/** Codes of a look at the host that naming it, or another one, would change. */
const NOT_TO_CALL = new Set<unknown>(["target-in-own-network", "target-not-callable"]);

/** Why nothing can be brought to the broker, as last seen. */
interface Trouble {
  fault: Extract<MessageFault, `mqtt-${string}`>;
}

/** The line to the owner's message broker: brings the plan there, and readings of sensors into the journal. */
export async function openBroker(input: BrokerInput): Promise<BrokerLine> {
  const { settings, log } = input;
  const trouble: Trouble = { fault: "mqtt-unreachable" };
  const client = await clientFor(input);
  client.on("connect", () => {
    trouble.fault = "mqtt-unreachable";
    log.info({ event: "broker-connected" });
  });
  client.on("error", (error) => {
    const { code } = error as { code?: unknown };
    if (typeof code === "number" && NOT_LET_IN.has(code)) trouble.fault = "mqtt-refused";
    if (NOT_TO_CALL.has(code)) trouble.fault = "mqtt-own-network";
    log.warn({ event: "broker-trouble", code });
  });
  listenToReadings(client, input);
  return { channel: brokerChannel(client, { settings, trouble }), close: () => client.endAsync(true) };
}

async function clientFor({
  settings,
  outgoing,
  reconnectMs = RECONNECT_MS,
}: BrokerInput): Promise<MqttClient> {
  // Loaded only where somebody wants it: most houses have no broker.
  const { MqttClient } = await import("mqtt");
  const url = new URL(settings.url);
  return new MqttClient(() => brokerStream(url, outgoing), {
    ...loginOf(url),
    protocolVersion: LEVELS[settings.version],
    reconnectPeriod: reconnectMs,
    connectTimeout: ANSWER_WAIT_MS,
    queueQoSZero: false,
  });
}

function loginOf({ username, password }: URL): Pick<IClientOptions, "username" | "password"> {
  return {
    ...(username === "" ? {} : { username: decodeURIComponent(username) }),
    ...(password === "" ? {} : { password: decodeURIComponent(password) }),
  };
}

function listenToReadings(client: MqttClient, input: BrokerInput): void {
  const topics = READINGS.map((kind) => `${input.settings.topic}/readings/+/${kind}`);
  client.subscribe(topics, { qos: 1 });
  client.on("message", (topic, payload, { retain }) => {
    // A kept reading does not say when it was taken.
    if (!retain) void takeReading(input, { topic, payload: payload.toString("utf8") });
  });
}

function brokerChannel(
  client: MqttClient,
  { settings, trouble }: { settings: BrokerSettings; trouble: Trouble },
): Channel {
  return {
    name: BROKER_CHANNEL,
    sort: "mqtt",
    extraOf: (content) => JSON.stringify(messageData(content)),
    async deliver(message): Promise<Delivery> {
      if (!client.connected) return { ok: false, fault: trouble.fault };
      const topic = `${settings.topic}/${message.siteId}/plan`;
      const acknowledged = client.publishAsync(topic, message.extra ?? message.body, {
        qos: 1,
        retain: true,
      });
      return (await inTime(acknowledged)) ? { ok: true } : { ok: false, fault: "mqtt-unreachable" };
    },
  };
}

async function inTime(work: Promise<unknown>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), ANSWER_WAIT_MS);
  });
  const done = work.then(
    () => true,
    () => false,
  );
  return Promise.race([done, late]).finally(() => clearTimeout(timer));
}

async function takeReading(
  { store, now, log }: BrokerInput,
  reading: { topic: string; payload: string },
): Promise<void> {
  try {
    const [site] = await store.sites.list();
    if (!site) return;
    const entry = sensorEntry(reading, { pots: await store.pots.list(site.id), nowUtcMs: now() });
    if (entry) await store.journal.append(site.id, [entry]);
    else log.warn({ event: "reading-not-used", topic: reading.topic });
  } catch (error) {
    log.error({ event: "reading-broke", error });
  }
}
