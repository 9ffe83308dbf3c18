import { parentPort } from "node:worker_threads";
import { Agent } from "undici";

/** What the bench asks of its client, which has a thread of its own so that only the server's time counts. */
export interface Asked {
  readonly origin: string;
  readonly path: string;
  readonly connectionCount: number;
  readonly requestCount: number;
  /** As a browser that already has the page asks. */
  readonly withEtag: boolean;
}

parentPort?.on("message", (asked: Asked) => {
  void timesMs(asked).then((times) => parentPort?.postMessage(times));
});

/** Time to the last byte of each request. */
async function timesMs({ origin, path, connectionCount, requestCount, withEtag }: Asked): Promise<number[]> {
  const agent = new Agent({ connections: connectionCount, pipelining: 1 });
  const first = await ask(agent, { origin, path });
  const etag = withEtag ? String(first.headers.etag ?? "") : "";
  const times: number[] = [];
  let left = requestCount;
  const worker = async () => {
    while (left-- > 0) {
      const began = performance.now();
      await ask(agent, { origin, path, etag });
      times.push(performance.now() - began);
    }
  };
  await Promise.all(Array.from({ length: connectionCount }, worker));
  await agent.close();
  return times;
}

async function ask(agent: Agent, to: { origin: string; path: string; etag?: string }) {
  const { origin, path, etag } = to;
  const headers = { "accept-encoding": "gzip, deflate", ...(etag ? { "if-none-match": etag } : {}) };
  const answer = await agent.request({ origin, path, method: "GET", headers });
  await answer.body.dump({ limit: 10_000_000 });
  if (answer.statusCode !== 200 && answer.statusCode !== 304)
    throw new Error(`${path}: ${answer.statusCode}`);
  return answer;
}
