import { once } from "node:events";
import process from "node:process";
import { Worker } from "node:worker_threads";
import { Hono } from "hono";
import { listen } from "../../service/listen.ts";
import { FULL_HOUSE_POTS, fullHouse } from "./full-house.ts";
import type { Asked } from "./page-client.ts";

const CONNECTIONS = 20;
const REQUESTS = 4000;
const ROUNDS = 3;
const PATHS = ["/", "/pots", "/pots/lemon-3"];

/**
 * Answering time of the pages with some 300 pots stored, with all that every request passes, beside a bare route of the
 * same framework on the same kind of server. The client stands on a thread of its own and asks as a browser does, for
 * gzip; `again` is a browser that already has the page. The best of three rounds counts: others use the machine as well.
 */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const house = await fullHouse();
  const bare = await listen(
    new Hono().get("/hello", (c) => c.text("hello")),
    { host: "127.0.0.1", port: 0 },
  );
  const client = new Worker(new URL("./page-client.ts", import.meta.url));
  const timed = (origin: string, path: string, withEtag: boolean) =>
    bestRound(client, { origin, path, withEtag, connectionCount: CONNECTIONS, requestCount: REQUESTS });
  const hello = await timed(bare.url, "/hello", false);
  const lines = [line("/hello", hello, hello)];
  for (const path of PATHS) {
    lines.push(line(path, await timed(house.url, path, false), hello));
    lines.push(line(`${path} again`, await timed(house.url, path, true), hello));
  }
  await client.terminate();
  await bare.close();
  await house.close();
  return {
    name: `pages, ${FULL_HOUSE_POTS} pots, ${CONNECTIONS} connections, ${REQUESTS} requests each`,
    lines,
  };
}

/** Answering times of one round, and the processor's time that the server's thread took for each, ms. */
interface Round {
  readonly p50: number;
  readonly p99: number;
  readonly cpu: number;
}

/** The round whose slowest hundredth was fastest, after one that warms up. */
async function bestRound(client: Worker, asked: Asked): Promise<Round> {
  await roundOf(client, { ...asked, requestCount: 1000 });
  const rounds: Round[] = [];
  for (let round = 0; round < ROUNDS; round++) rounds.push(await roundOf(client, asked));
  return rounds.reduce((best, round) => (round.p99 < best.p99 ? round : best));
}

async function roundOf(client: Worker, asked: Asked): Promise<Round> {
  const before = process.threadCpuUsage();
  client.postMessage(asked);
  const [times] = await once(client, "message");
  const { user, system } = process.threadCpuUsage(before);
  return { p50: at(times, 0.5), p99: at(times, 0.99), cpu: (user + system) / 1000 / asked.requestCount };
}

/** A path beside the bare route; the multiple is that of the slowest hundredth. */
function line(path: string, round: Round, hello: Round): string {
  const ratio = (round.p99 / hello.p99).toFixed(1);
  const [p50, p99] = [round.p50, round.p99].map((ms) => ms.toFixed(1));
  return `${path.padEnd(20)} p50 ${p50} ms, p99 ${p99} ms (${ratio} times hello), processor ${round.cpu.toFixed(2)} ms`;
}

function at(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}
