import { randomUUID } from "node:crypto";
import { once } from "node:events";
import { createServer } from "node:net";
import { join } from "node:path";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { readSettings, type ServiceSettings } from "../../service/config.ts";
import { startFaultLine } from "../../service/start-fault.ts";
import { type StartOptions, startService } from "../../service/start-service.ts";
import { openStore } from "../../service/store/open-store.ts";
import { tickForm } from "../drills/tick-form.ts";
import { house } from "./jobs/bench-jobs.ts";
import { fill } from "./store/bench.ts";
import { tempFolder } from "./store/test-store.ts";

const NOW = Date.parse("2031-05-02T03:30Z");

function settings(env: Record<string, string> = {}): ServiceSettings {
  const read = readSettings({ LEEBENCH_DATA_DIR: tempFolder(), LEEBENCH_PORT: "0", ...env });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

async function started(with_: { settings?: ServiceSettings; options?: StartOptions } = {}) {
  const printed: string[] = [];
  const { parts, feed } = await house();
  const service = await startService(with_.settings ?? settings(), {
    now: () => NOW,
    beating: false,
    log: parts.log,
    write: (text) => void printed.push(text),
    fetchWeather: parts.fetchWeather,
    ...(parts.plan ? { plan: parts.plan } : {}),
    ...with_.options,
  });
  onTestFinished(() => service.close());
  return { service, printed, feed };
}

function get(service: { url: string }, path: string, init?: RequestInit) {
  return fetch(new URL(path, service.url), { redirect: "manual", ...init });
}

describe("the service", () => {
  it("started in an empty folder leads the newcomer to a page, and tells that it is ready", async () => {
    const { service } = await started();
    expect(service.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    const front = await get(service, "/");
    expect([200, 303]).toContain(front.status);
    expect(await (await get(service, "/healthz")).text()).toBe("alive\n");
    expect((await get(service, "/readyz")).status).toBe(200);
  });

  it("without mail prints the brief whole", async () => {
    const { service, printed } = await started();
    await fill(service.store);
    await service.beatNow();
    await service.beatNow();
    expect(printed).toHaveLength(1);
    expect(printed[0]).toContain("Friday 2 May at Yard");
  });

  it("makes a plan when asked, and says why when it cannot", async () => {
    const { service, feed } = await started();
    expect(await service.replan("yard")).toMatchObject({ ok: false, problems: [{ code: "no-such-site" }] });
    await fill(service.store);
    feed.isDown = true;
    expect(await service.replan("yard")).toMatchObject({
      ok: false,
      problems: [{ code: "no-weather-yet" }, {}],
    });
    feed.isDown = false;
    expect(await service.replan("yard")).toMatchObject({ ok: false });
  });

  it("answers a planner that breaks with a problem, and stays up", async () => {
    const plan = () => {
      throw new RangeError("waterMl is NaN");
    };
    const { service } = await started({ options: { plan } });
    await fill(service.store);
    expect(await service.replan("yard")).toMatchObject({ ok: false, problems: [{ code: "plan-failed" }] });
    await service.beatNow();
    expect((await get(service, "/readyz")).status).toBe(200);
  });

  it("closes cleanly: no further answer, the store closed, the folder free", async () => {
    const at = settings();
    const { service } = await started({ settings: at });
    await get(service, "/healthz");
    await service.close();
    await expect(get(service, "/healthz")).rejects.toThrow();
    expect(service.store.raw.open).toBe(false);
    await service.close();
    await started({ settings: at });
  });

  it("beats by itself from the start", async () => {
    const at = settings();
    const store = await openStore(join(at.dataDir, "leebench.db"));
    await fill(store);
    await store.close();
    const { printed } = await started({ settings: at, options: { beating: true } });
    await vi.waitFor(() => expect(printed).toHaveLength(1));
  });
});

describe("a store that cannot be written", () => {
  async function writable() {
    const { service } = await started();
    await fill(service.store);
    await service.beatNow();
    const send = (entryId: string) =>
      get(service, "/done", { method: "POST", body: tickForm({ entryId, potId: "p1" }) });
    const ids = async () => (await service.store.journal.list("yard")).map(({ id }) => id);
    return { service, send, ids };
  }

  it("because the disk is full refuses the entry in one clear line, keeps nothing of it, and recovers by itself", async () => {
    const { service, send, ids } = await writable();
    expect((await send(randomUUID())).status).toBe(303);
    const pages = service.store.raw.pragma("page_count", { simple: true });
    service.store.raw.pragma(`max_page_count = ${pages}`);
    const refused = await fillUp(send);
    expect([refused.answer.status, await refused.answer.text()]).toEqual([
      507,
      "The disk is full. Nothing of this was kept; free some space and send it again.\n",
    ]);
    expect(await ids()).not.toContain(refused.id);
    expect((await get(service, "/")).status).toBe(200);
    await service.beatNow();
    service.store.raw.pragma("max_page_count = 1000000");
    expect((await send(refused.id)).status).toBe(303);
    expect((await ids()).filter((id) => id === refused.id)).toHaveLength(1);
    expect(service.store.raw.pragma("integrity_check", { simple: true })).toBe("ok");
  });

  it("because it is read-only refuses likewise", async () => {
    const { service, send, ids } = await writable();
    service.store.raw.pragma("query_only = 1");
    const late = randomUUID();
    const refused = await send(late);
    expect([refused.status, await refused.text()]).toEqual([
      503,
      "The store cannot be written. Nothing of this was kept; give the service write access to its data folder.\n",
    ]);
    await service.beatNow();
    service.store.raw.pragma("query_only = 0");
    expect(await ids()).not.toContain(late);
    expect((await send(late)).status).toBe(303);
  });

  /** Free pages in the file are used first, so it takes a while. */
  async function fillUp(send: (id: string) => Promise<Response>): Promise<{ id: string; answer: Response }> {
    for (let count = 0; count < 2000; count++) {
      const id = randomUUID();
      const answer = await send(id);
      if (answer.status !== 303) return { id, answer };
    }
    throw new Error("the disk did not get full");
  }
});

describe("a start that cannot be", () => {
  it("on a folder that another service works on says so", async () => {
    const at = settings();
    await started({ settings: at });
    const second = await startService(at, { beating: false }).catch((error: unknown) => error);
    expect(startFaultLine(second, at)).toBe(
      `${at.dataDir}: Another Leebench works on this data folder. Stop it, or give this one a folder of its own.`,
    );
  });

  it("on a port that is taken says so, and leaves the folder free", async () => {
    const other = createServer().listen(0, "127.0.0.1");
    await once(other, "listening");
    onTestFinished(() => void other.close());
    const { port } = other.address() as { port: number };
    const at = settings({ LEEBENCH_PORT: String(port) });
    const failed = await startService(at, { beating: false }).catch((error: unknown) => error);
    expect(startFaultLine(failed, at)).toBe(
      `Port ${port} on 127.0.0.1 is taken. Stop what listens there, or set LEEBENCH_PORT to another.`,
    );
    await started({ settings: { ...at, port: 0 } });
  });
});

describe("seen from outside", () => {
  it("is not ready while it stops or its jobs stand still", async () => {
    let nowUtcMs = NOW;
    const { service } = await started({ options: { now: () => nowUtcMs } });
    await service.beatNow();
    nowUtcMs += 3 * 60_000;
    expect((await service.app.request("/readyz")).status).toBe(200);
    nowUtcMs += 60_000;
    const still = await service.app.request("/readyz");
    expect([still.status, await still.text()]).toEqual([503, "the jobs stand still\n"]);
    await service.close();
    const stopped = await service.app.request("/readyz");
    expect(await stopped.text()).toContain("stopping\nthe store does not answer\n");
    expect((await service.app.request("/healthz")).status).toBe(200);
  });

  it("tells its counts in the Prometheus text format", async () => {
    const { service } = await started();
    await fill(service.store);
    await service.beatNow();
    const answer = await get(service, "/metrics");
    expect(answer.headers.get("content-type")).toBe("text/plain; version=0.0.4; charset=utf-8");
    const text = await answer.text();
    // Exposition format 0.0.4: comment lines, then name, labels, value; a HELP and a TYPE for each name, once.
    const line =
      /^(# (HELP|TYPE) [a-z_:]+ .+|[a-z_:]+(\{[a-z_]+="[^"\\]*"(,[a-z_]+="[^"\\]*")*\})? -?\d+(\.\d+)?(e[+-]?\d+)?)$/;
    expect(text.endsWith("\n")).toBe(true);
    for (const one of text.trimEnd().split("\n")) expect(one).toMatch(line);
    const types = [...text.matchAll(/^# TYPE (\S+) /gm)].map(([, name]) => name);
    expect(new Set(types).size).toBe(types.length);
    const samples = new Set([...text.matchAll(/^([a-z_:]+)[{ ]/gm)].map(([, name]) => name));
    expect([...samples].sort()).toEqual([...types].sort());
    expect(text).toContain('leebench_mornings_total{outcome="done"} 1\n');
    expect(text).toContain('leebench_messages{state="sent"} 1\n');
    expect(text).not.toMatch(/48\.5|9\.25|Yard/);
  });
});

describe("listening beyond this machine", () => {
  it("asks every visitor who they are, on every path but health and what tells nothing", async () => {
    const at = settings({ LEEBENCH_HOST: "0.0.0.0", LEEBENCH_PASSPHRASE: "the fig on the stairs" });
    const { service, printed } = await started({ settings: at });
    const { app } = service;
    for (const path of ["/", "/begin", "/metrics", "/nowhere", "//healthz", "/healthz/x"]) {
      const refused = await app.request(path);
      expect(refused.status, path).toBe(401);
      expect(refused.headers.get("www-authenticate")).toMatch(/^Bearer realm=/);
    }
    expect((await app.request("/done", { method: "POST" })).status).toBe(401);
    expect((await app.request("/healthz")).status).toBe(200);
    expect((await app.request("/readyz")).status).toBe(200);
    expect(printed).toEqual([]);
  });

  it("without a passphrase prints the one-time code with which the owner chooses one", async () => {
    const { printed } = await started({ settings: settings({ LEEBENCH_HOST: "0.0.0.0" }) });
    expect(printed.join()).toMatch(/one-time code .* is [A-Z2-9]{4}-[A-Z2-9]{4}-[A-Z2-9]{4}\n/);
  });
});
