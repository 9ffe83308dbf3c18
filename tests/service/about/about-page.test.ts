import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { borrowedFromLock } from "../../../service/about/borrowed-work.ts";
import { CHANGES } from "../../../service/about/changes.ts";
import { outgoingToFeeds } from "../../../service/about/leaves-house.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { VERSION } from "../../../service/version.ts";
import { collection, plan } from "../brief/plan-builder.ts";
import { houseOf } from "../pages/house-of.ts";

const ROOT = join(import.meta.dirname, "../../..");
const LOCK = readFileSync(join(ROOT, "package-lock.json"), "utf8");
const OWN = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));

/** Licences under which a library may be carried in a program that is passed on under the MIT licence. */
const FREE =
  /^(MIT|MIT-0|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|BlueOak-1\.0\.0|Unlicense|CC0-1\.0)$/;
/** Carried unchanged, as libraries of their own that whoever runs the house can exchange: LGPL and MPL ask no more. */
const EXCHANGEABLE = new Set(["@img/sharp-libvips", "web-push"]);

describe("libraries that run in the service", () => {
  const borrowed = borrowedFromLock(LOCK);

  it("are all told, those named in package.json among them, and nothing that only tests or builds", () => {
    const names = new Set(borrowed.map(({ name }) => name));
    expect(Object.keys(OWN.dependencies).filter((name) => !names.has(name))).toEqual([]);
    expect(Object.keys(OWN.devDependencies).filter((name) => names.has(name))).toEqual([]);
    expect(borrowed.every(({ version }) => /^\d+\.\d+\.\d+/.test(version))).toBe(true);
  });

  it("may be passed on with a program of ours", () => {
    const bound = borrowed.filter(({ name, licence }) => !FREE.test(licence) && !EXCHANGEABLE.has(name));
    expect(bound).toEqual([]);
  });
});

describe("the change log", () => {
  it("begins with this version, newest first, and says of each what changed in the advice", () => {
    expect(CHANGES[0]?.version).toBe(VERSION);
    const numbers = CHANGES.map(({ version }) => version.split(".").map(Number));
    for (const [index, [major = 0, minor = 0, patch = 0]] of numbers.slice(1).entries()) {
      const [later] = numbers.slice(index, index + 1);
      const step = [later![0]! - major, later![1]! - minor, later![2]! - patch];
      expect(step.find((part) => part !== 0)).toBeGreaterThan(0);
    }
    for (const { advice } of CHANGES) expect(advice.length).toBeGreaterThan(0);
  });
});

describe("what leaves the house", () => {
  it("is every host of the settings, the second service only with a contact to give", () => {
    const feed = { ...DEFAULT_FEED_SETTINGS, forecastUrl: "https://mine.example:8443/om" };
    const told = outgoingToFeeds(feed);
    expect(told.map(({ what }) => what)).toEqual([
      "forecast",
      "ensemble",
      "places",
      "elevation",
      "archive",
      "archive-forecasts",
    ]);
    expect(told[0]).toEqual({ what: "forecast", host: "mine.example:8443" });
    const withContact = outgoingToFeeds({ ...feed, contact: "a@host.example" });
    expect(withContact).toContainEqual({ what: "fallback", host: "api.met.no" });
    const hosts = Object.values(feed).filter((value) => typeof value === "string" && URL.canParse(value));
    expect(withContact).toHaveLength(hosts.length);
  });

  it("stands on a page of its own with the changes and the libraries", async () => {
    const { get } = await houseOf({ collection, plan: plan() });
    const { text } = await get("/house/about");
    for (const part of [
      "api.open-meteo.com",
      "rounded to about 100 m",
      `Leebench ${VERSION}`,
      "zod",
      "In the advice",
    ])
      expect(text).toContain(part);
  });
});
