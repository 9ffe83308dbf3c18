import { describe, expect, it } from "vitest";
import { exportAll, importAll } from "../../../service/store/transfer.ts";
import { barePlan } from "./bare-plan.ts";
import { fill, note, pot, site } from "./bench.ts";
import { someWeather } from "./some-weather.ts";
import { emptyStore } from "./test-store.ts";

const NOW = Date.parse("2031-05-02T04:00Z");

async function lively() {
  const store = await emptyStore();
  await fill(store);
  await fill(store, site({ id: "roof", zone: "Asia/Kolkata" }));
  await store.settings.put("yard", { ...(await store.settings.get("yard")), tripWorth: 7 });
  await store.journal.append("yard", [
    note("n1"),
    { id: "u1", atUtcMs: NOW, recordedUtcMs: NOW, body: { kind: "undo", ofEntryId: "n1" } },
  ]);
  await store.photos.put("yard", { id: `${"0a".repeat(16)}-4x3`, bytes: Buffer.from("RIFF....WEBP") });
  const value = (name: string, hour: number) => (name === "rainMm" && hour === 2 ? Number.NaN : hour / 100);
  await store.weather.save("yard", someWeather({ memberCount: 2, value, fetchedUtcMs: NOW }));
  await store.plans.save(barePlan(), { kind: "morning", madeUtcMs: NOW, late: true });
  return store;
}

async function everything(store: Awaited<ReturnType<typeof emptyStore>>, siteId: string) {
  return {
    collection: await store.collection(siteId),
    settings: await store.settings.get(siteId),
    photos: (await store.photos.list(siteId)).map(({ id, bytes }) => [id, Buffer.from(bytes).toString()]),
    journal: await store.journal.list(siteId),
    past: await store.weather.past(siteId, 0),
    latest: (await store.weather.latest(siteId))?.hours,
    plans: (await store.plans.list(siteId)).map(({ plan, kind, late, madeUtcMs }) => ({
      plan,
      kind,
      late,
      madeUtcMs,
    })),
  };
}

describe("export and import", () => {
  it("carry everything to another machine through plain JSON", async () => {
    const [from, to] = [await lively(), await emptyStore()];
    const text = JSON.stringify(await exportAll(from, NOW));
    expect(await importAll(to, JSON.parse(text))).toEqual({
      ok: true,
      value: { sites: 2, pots: 2, entries: 4, plans: 1 },
    });
    for (const siteId of ["yard", "roof"])
      expect(await everything(to, siteId)).toEqual(await everything(from, siteId));
    expect(JSON.stringify(await exportAll(to, NOW)) === text).toBe(true);
  });

  it("of a house without anything are an empty list", async () => {
    const written = await exportAll(await emptyStore(), NOW);
    expect(written).toEqual({
      format: "leebench-export",
      version: 1,
      exportedAt: "2031-05-02T04:00:00.000Z",
      sites: [],
    });
    expect(await importAll(await emptyStore(), written)).toMatchObject({ ok: true });
  });

  it("mix nothing up: a site that is here already is refused", async () => {
    const store = await lively();
    const refused = await importAll(store, await exportAll(store, NOW));
    expect(refused.ok ? [] : refused.problems.map(({ code, path }) => `${code} ${path[1]}`)).toEqual([
      "site-is-here 0",
      "site-is-here 1",
    ]);
    expect(await store.journal.list("yard")).toHaveLength(3);
  });

  it("tell every fault and then take in nothing", async () => {
    const written = JSON.parse(JSON.stringify(await exportAll(await lively(), NOW)));
    written.sites[0].collection.pots[0].canopyWidthCm = "wide";
    written.sites[1].journal[0].at = "yesterday";
    written.extra = 1;
    const store = await emptyStore();
    const refused = await importAll(store, written);
    expect([...new Set(refused.ok ? [] : refused.problems.map(({ path }) => path.join(".")))].sort()).toEqual(
      ["extra", "sites.0.collection.pots.0.canopyWidthCm", "sites.1.journal.0.at"],
    );
    expect(await store.sites.list()).toEqual([]);
  });

  it("refuse a file in which a site stands twice", async () => {
    const written = JSON.parse(JSON.stringify(await exportAll(await lively(), NOW)));
    written.sites.push(written.sites[0]);
    const store = await emptyStore();
    expect(await importAll(store, written)).toMatchObject({
      ok: false,
      problems: [{ code: "site-is-here" }],
    });
    expect(await store.sites.list()).toEqual([]);
  });

  it("keep a plan that an older program made in a shape of its own", async () => {
    const store = await emptyStore();
    await fill(store);
    const old = { ...barePlan(), moonPhase: "new" } as ReturnType<typeof barePlan>;
    await store.plans.save(old, { kind: "morning", madeUtcMs: NOW });
    const other = await emptyStore();
    await importAll(other, JSON.parse(JSON.stringify(await exportAll(store, NOW))));
    expect(await other.plans.latest("yard")).toEqual(old);
  });

  it("carry the pots' own values", async () => {
    const store = await emptyStore();
    await fill(store);
    await store.pots.put("yard", pot({ own: { refillFrac: 0.4 }, count: 3 }));
    const other = await emptyStore();
    await importAll(other, JSON.parse(JSON.stringify(await exportAll(store, NOW))));
    expect(await other.pots.list("yard")).toEqual(await store.pots.list("yard"));
  });
});
