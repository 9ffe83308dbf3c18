import type { Outcome, Problem } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import { HOUR_MS, type Weather } from "../../core/weather/weather.ts";
import { instantText } from "../case/instant.ts";
import { readBy } from "../case/problems-from-zod.ts";
import { writtenEntry, writtenWeather } from "../case/write-case.ts";
import { ExportSchema, type ReadExport, type WrittenExport } from "./export-schema.ts";
import type { Store } from "./open-store.ts";
import type { PastHours } from "./past-hours.ts";
import type { StoreQueries } from "./store-queries.ts";

type SiteExport = WrittenExport["sites"][number];
type ReadSite = ReadExport["sites"][number];

export interface Imported {
  readonly sites: number;
  readonly pots: number;
  readonly entries: number;
  readonly plans: number;
}

/**
 * Everything of the house as one JSON object of ExportSchema. Forecasts but the newest stay in backups only, and so do
 * people and the ways to them, which hold secrets.
 */
export async function exportAll(store: Store, nowUtcMs: number): Promise<WrittenExport> {
  return store.together(async (step) => {
    const sites: SiteExport[] = [];
    for (const site of await step.sites.list()) sites.push(await exportSite(step, site));
    return { format: "leebench-export", version: 1, exportedAt: instantText(nowUtcMs), sites };
  });
}

/**
 * Takes in what `exportAll` wrote, whole or not at all.
 * @returns every problem of shape, or "site-is-here" where a site of the same id is here already
 */
export async function importAll(store: Store, given: unknown): Promise<Outcome<Imported>> {
  const read = readBy(ExportSchema, given);
  if (!read.ok) return read;
  const clashes = await clashesOf(store, read.value.sites);
  if (clashes.length > 0) return { ok: false, problems: clashes };
  await store.together(async (step) => {
    for (const site of read.value.sites) await importSite(step, site);
  });
  return { ok: true, value: countsOf(read.value.sites) };
}

/** Sites that are here already, or stand twice in the file. */
async function clashesOf(store: Store, sites: readonly ReadSite[]): Promise<Problem[]> {
  const taken = new Set((await store.sites.list()).map(({ id }) => id));
  const clashes: Problem[] = [];
  for (const [index, { collection }] of sites.entries()) {
    const siteId = collection.site.id;
    const path = ["sites", index, "collection", "site", "id"];
    if (taken.has(siteId)) clashes.push({ code: "site-is-here", path, data: { siteId } });
    taken.add(siteId);
  }
  return clashes;
}

async function exportSite(step: StoreQueries, site: Site): Promise<SiteExport> {
  const latest = await step.weather.latest(site.id);
  const plans = await step.plans.list(site.id, Number.MAX_SAFE_INTEGER);
  return {
    collection: (await step.collection(site.id)) as unknown as SiteExport["collection"],
    settings: await step.settings.get(site.id),
    journal: (await step.journal.list(site.id)).map(writtenEntry),
    pastWeather: writtenPast(await step.weather.past(site.id, Number.MIN_SAFE_INTEGER), latest),
    latestWeather: latest && writtenWeather(latest),
    photos: (await step.photos.list(site.id)).map(({ id, bytes }) => ({
      id,
      webp: Buffer.from(bytes).toString("base64"),
    })),
    plans: plans.reverse().map(({ kind, madeUtcMs, late, plan }) => ({
      kind,
      madeAt: instantText(madeUtcMs),
      late,
      plan: { ...plan },
    })),
  };
}

function writtenPast(past: PastHours | null, latest: Weather | null): SiteExport["pastWeather"] {
  if (!past) return null;
  const { source, credit } = latest?.origin ?? { source: "case" as const, credit: "" };
  const fetchedUtcMs = past.startUtcMs + past.hourCount * HOUR_MS;
  return writtenWeather({ ...past, members: null, origin: { source, credit, fetchedUtcMs } });
}

async function importSite(step: StoreQueries, given: ReadSite): Promise<void> {
  const { collection, settings, journal, plans, pastWeather: past, latestWeather: latest } = given;
  const { site } = collection;
  await step.sites.put(site);
  for (const spot of collection.spots) await step.spots.put(site.id, spot);
  for (const mix of collection.mixes) await step.mixes.put(site.id, mix);
  for (const pot of collection.pots) await step.pots.put(site.id, pot);
  for (const component of collection.ownComponents ?? []) await step.ownComponents.put(site.id, component);
  for (const group of collection.ownGroups ?? []) await step.ownGroups.put(site.id, group);
  await step.settings.put(site.id, settings);
  await step.journal.append(site.id, journal);
  for (const { id, webp } of given.photos ?? [])
    await step.photos.put(site.id, { id, bytes: Buffer.from(webp, "base64") });
  if (past) await step.weather.savePast(site.id, past);
  if (latest) await step.weather.save(site.id, latest);
  for (const { plan, kind, madeAt, late } of plans)
    await step.plans.save(plan, { kind, madeUtcMs: madeAt, late });
}

function countsOf(sites: readonly ReadSite[]): Imported {
  const sum = (of: (site: ReadSite) => number) => sites.reduce((total, site) => total + of(site), 0);
  return {
    sites: sites.length,
    pots: sum(({ collection }) => collection.pots.length),
    entries: sum(({ journal }) => journal.length),
    plans: sum(({ plans }) => plans.length),
  };
}
