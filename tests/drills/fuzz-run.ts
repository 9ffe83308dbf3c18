import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { plan as planFromCore } from "../../core/plan/make-plan.ts";
import { DEFAULT_FEED_SETTINGS } from "../../service/feed/feed-settings.ts";
import { openStore } from "../../service/store/open-store.ts";
import { guardedHouse } from "../service/access/guarded-house.ts";
import { type FuzzRequest, fuzzRequests } from "./fuzz-requests.ts";

export interface FuzzResult {
  readonly requests: number;
  readonly accepted: number;
  readonly refused: number;
  readonly slowestMs: number;
  /** Heap in use after each house, garbage collected where that can be asked for. */
  readonly heapMb: readonly number[];
  readonly faults: readonly string[];
}

/** Longest time that an answer may take. */
const LONGEST_MS = 2000;
/** What was slow is asked again, so often: a busy machine stalls anything once, a hang is there each time. */
const ASKED_AGAIN = 2;
/** Then the house begins anew, so that what was accepted does not pile up without end. */
const A_HOUSE = 2500;
/** No such place: whatever is looked up outside is refused at once. */
const NOWHERE = "http://127.0.0.1:9";
const MOST_FAULTS = 40;

type House = Awaited<ReturnType<typeof guardedHouse>>;

/** Asks the whole house, in one process and without a socket; every third house reckons with the real planner. */
export async function fuzz({ requests, seed }: { requests: number; seed: number }): Promise<FuzzResult> {
  const faults: string[] = [];
  const onRejection = (reason: unknown) => void faults.push(`unhandled rejection: ${reason}`);
  process.on("unhandledRejection", onRejection);
  const counts = { requests: 0, accepted: 0, refused: 0, slowestMs: 0 };
  const heapMb: number[] = [];
  for (let house = 0; counts.requests < requests && faults.length < MOST_FAULTS; house++) {
    const size = Math.min(A_HOUSE, requests - counts.requests);
    await oneHouse(fuzzRequests(seed + house, size), { isReal: house % 3 === 0, counts, faults });
    globalThis.gc?.();
    heapMb.push(Math.round(process.memoryUsage().heapUsed / 2 ** 20));
  }
  await new Promise((resolve) => setTimeout(resolve, 50));
  process.off("unhandledRejection", onRejection);
  return { ...counts, heapMb, faults };
}

async function oneHouse(
  requests: readonly FuzzRequest[],
  {
    isReal,
    counts,
    faults,
  }: {
    isReal: boolean;
    counts: { requests: number; accepted: number; refused: number; slowestMs: number };
    faults: string[];
  },
): Promise<void> {
  const store = await openStore(":memory:");
  const backupDir = mkdtempSync(join(tmpdir(), "leebench-fuzz-"));
  const feed = {
    ...DEFAULT_FEED_SETTINGS,
    forecastUrl: NOWHERE,
    ensembleUrl: NOWHERE,
    geocodingUrl: NOWHERE,
    elevationUrl: NOWHERE,
  };
  const house = await guardedHouse(
    { LEEBENCH_HOST: "0.0.0.0" },
    { store, feed, backupDir, ...(isReal ? { plan: planFromCore } : {}) },
  );
  const askers = await askersOf(house);
  await house.parts.store.plans.latest("yard");
  for (const request of requests) {
    const who = request.asker === "leaver" ? await house.signedIn("viewer") : askers[request.asker];
    const before = changesOf(house);
    const { answer, tookMs } = await timed(house, request, who);
    counts.requests++;
    counts.slowestMs = Math.max(counts.slowestMs, Math.round(tookMs));
    counts[answer.status < 400 ? "accepted" : "refused"]++;
    const wrong = [
      ...(answer.status >= 500 && !(await isHonest(answer)) ? [`answered ${answer.status}`] : []),
      ...(tookMs > LONGEST_MS ? [`took ${Math.round(tookMs)} ms`] : []),
      ...(answer.status >= 400 && changesOf(house) !== before ? ["refused, but something was written"] : []),
      ...house.logged
        .splice(0)
        .map((line) => `logged ${JSON.stringify({ ...line, error: String(line.error) })}`),
    ];
    for (const what of wrong) faults.push(`${what}: ${shown(request)}`);
    if (faults.length >= MOST_FAULTS) break;
  }
  await store.close();
  rmSync(backupDir, { recursive: true, force: true });
}

/** What leans on the feed says so when nobody answers there, as nobody does in this drill. */
async function isHonest(answer: Response): Promise<boolean> {
  return answer.status === 503 && /"code":"feed-not-there"/.test(await answer.text());
}

type Known = Exclude<FuzzRequest["asker"], "leaver">;

async function askersOf(house: House): Promise<Record<Known, Record<string, string>>> {
  const FAR_MS = 10 * 365 * 86_400_000;
  const owner = await house.token("owner", house.clock.nowUtcMs + FAR_MS);
  const [helper, viewer] = [await house.signedIn("helper"), await house.signedIn("viewer")];
  await house.signedIn("owner");
  // The first use of a token is noted; after that asking writes nothing.
  await house.app.request("/metrics", { headers: owner });
  return { owner, helper, viewer, nobody: {}, elsewhere: { ...helper, "sec-fetch-site": "cross-site" } };
}

/** The first answer, and the least time that it took. */
async function timed(
  house: House,
  request: FuzzRequest,
  who: Record<string, string>,
): Promise<{ answer: Response; tookMs: number }> {
  let [answer, tookMs]: [Response | null, number] = [null, Number.POSITIVE_INFINITY];
  for (let turn = 0; turn <= ASKED_AGAIN && tookMs > LONGEST_MS; turn++) {
    const startedMs = performance.now();
    const given = await answerTo(house, request, who);
    answer ??= given;
    tookMs = Math.min(tookMs, performance.now() - startedMs);
  }
  return { answer: answer!, tookMs };
}

async function answerTo(house: House, request: FuzzRequest, who: Record<string, string>): Promise<Response> {
  const { method, path, headers, body } = request;
  const answer = await house.app.request(path, {
    method,
    headers: { ...latin(headers), ...who },
    ...(body === null || method === "GET" || method === "HEAD" ? {} : { body: body as string }),
  });
  await answer.clone().arrayBuffer();
  return answer;
}

/** Header values travel as bytes. */
function latin(headers: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(headers).filter(([, value]) => !/[^\x20-\xff]/.test(value)));
}

function changesOf({ store }: House): number {
  return store.raw.prepare("SELECT total_changes()").pluck().get() as number;
}

function shown({ method, path, headers, body, asker }: FuzzRequest): string {
  const text =
    body === null ? "" : typeof body === "string" ? body : `<${Buffer.from(body).toString("hex")}>`;
  return `${asker} ${method} ${path.slice(0, 200)} ${JSON.stringify(headers)} ${text.slice(0, 700)}`;
}
