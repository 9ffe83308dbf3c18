import { randomUUID } from "node:crypto";
import { Agent, type Dispatcher } from "undici";
import type { Dice } from "./seeded-dice.ts";
import { tickForm } from "./tick-form.ts";

export interface Load {
  readonly url: string;
  readonly token: string;
  readonly dice: Dice;
  readonly connections: number;
  /** Mean wait of one connection between two requests. */
  readonly thinkMs: number;
}

export interface LoadNotes {
  readonly tookMs: Map<string, number[]>;
  readonly acknowledged: Set<string>;
  readonly faults: string[];
  isOver: boolean;
}

interface Ask {
  readonly name: string;
  /** How often, against the others. */
  readonly weight: number;
  readonly path: string;
  /** Writes an entry of this id. */
  readonly entry?: (
    id: string,
  ) => Pick<Dispatcher.RequestOptions, "body"> & { headers: Record<string, string> };
}

const FORM = { "content-type": "application/x-www-form-urlencoded" };
const JSON_TYPE = { "content-type": "application/json" };

/** What a household's devices, a script and a watcher ask for on a busy day, in about these shares. */
const ASKS: readonly Ask[] = [
  { name: "GET /", weight: 20, path: "/" },
  { name: "GET /pots", weight: 10, path: "/pots" },
  { name: "GET /pots/p1", weight: 10, path: "/pots/p1" },
  { name: "GET /sky", weight: 5, path: "/sky" },
  { name: "GET /journal", weight: 4, path: "/journal" },
  { name: "GET /mixes/plain", weight: 3, path: "/mixes/plain" },
  { name: "GET /house/status", weight: 2, path: "/house/status" },
  { name: "GET /app.js", weight: 4, path: "/app.js" },
  { name: "GET /metrics", weight: 2, path: "/metrics" },
  { name: "api plan", weight: 8, path: "/api/v1/sites/yard/plan" },
  { name: "api pots", weight: 5, path: "/api/v1/sites/yard/pots" },
  { name: "api journal", weight: 4, path: "/api/v1/sites/yard/journal?limit=20" },
  { name: "api sky", weight: 2, path: "/api/v1/sites/yard/sky" },
  { name: "api what-if", weight: 0.5, path: "/api/v1/sites/yard/pots/p1/what-if" },
  {
    name: "POST /done",
    weight: 0.7,
    path: "/done",
    entry: (entryId) => ({ headers: FORM, body: tickForm({ entryId, potId: "p1" }).toString() }),
  },
  {
    name: "api add entry",
    weight: 0.7,
    path: "/api/v1/sites/yard/journal",
    entry: (id) => ({
      headers: { ...JSON_TYPE, "idempotency-key": id },
      body: JSON.stringify({ id, potId: "p2", body: { kind: "note", text: "soaked" } }),
    }),
  },
];

const ANSWER_WAIT_MS = 30_000;

/** Keeps the connections busy until the notes say that it is over. */
export async function keepLoad(load: Load, notes: LoadNotes): Promise<void> {
  const agent = new Agent({
    connections: load.connections,
    headersTimeout: ANSWER_WAIT_MS,
    bodyTimeout: ANSWER_WAIT_MS,
  });
  const lines = Array.from({ length: load.connections }, async () => {
    while (!notes.isOver) {
      await ask(load, notes, { agent, ask: drawn(load.dice) });
      await sleep(load.dice.share() * 2 * load.thinkMs);
    }
  });
  await Promise.all(lines);
  await agent.destroy();
}

function drawn(dice: Dice): Ask {
  let rest = dice.share() * ASKS.reduce((sum, { weight }) => sum + weight, 0);
  for (const ask of ASKS) {
    rest -= ask.weight;
    if (rest < 0) return ask;
  }
  return ASKS[0]!;
}

async function ask(load: Load, notes: LoadNotes, { agent, ask }: { agent: Agent; ask: Ask }): Promise<void> {
  const id = randomUUID();
  const sent = ask.entry?.(id);
  const startedMs = performance.now();
  try {
    const answer = await agent.request({
      origin: load.url,
      path: ask.path,
      method: sent ? "POST" : "GET",
      headers: { authorization: `Bearer ${load.token}`, ...sent?.headers },
      ...(sent ? { body: sent.body ?? null } : {}),
    });
    await answer.body.dump();
    if (answer.statusCode >= 400) notes.faults.push(`${ask.name} answered ${answer.statusCode}`);
    else if (sent) notes.acknowledged.add(id);
  } catch (error) {
    if (!notes.isOver) notes.faults.push(`${ask.name}: ${error}`);
  }
  const times = notes.tookMs.get(ask.name) ?? [];
  notes.tookMs.set(ask.name, times);
  times.push(performance.now() - startedMs);
}

export function sleep(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
