import { describe, expect, it } from "vitest";
import { ACCESS_TABLE, type AccessRow } from "../../../service/access/access-table.ts";
import type { Role } from "../../../service/access/roles.ts";
import { answerLinks } from "../../../service/notify/answer-links.ts";
import { barePlan } from "../store/bare-plan.ts";
import { guardedHouse, SAME_ORIGIN } from "./guarded-house.ts";

const ASKERS = [
  "nobody",
  "viewer",
  "helper",
  "owner",
  "token",
  "expired",
  "other-origin",
  "unnamed-origin",
] as const;
type Asker = (typeof ASKERS)[number];
type Expected = "let in" | "not signed in" | "refused";

/** What the written table says, reckoned here once more and not by the gate. */
function expected([method, , admits]: AccessRow, asker: Asker): Expected {
  const isChange = method !== "GET";
  if (asker === "other-origin" && isChange) return "refused";
  if (admits === "anyone" || admits === "own-link") return "let in";
  if (asker === "nobody" || asker === "expired") return "not signed in";
  if (asker === "unnamed-origin" && isChange) return "refused";
  const rank: Record<Role, number> = { viewer: 1, helper: 2, owner: 3 };
  const role: Role = asker === "viewer" || asker === "helper" ? asker : "owner";
  return rank[role] >= rank[admits] ? "let in" : "refused";
}

const PLACES: Record<string, string> = {
  siteId: "yard",
  potId: "p1",
  spotId: "steps",
  mixId: "plain",
  id: "p1",
};
const GATE_CODES = new Set(["role-too-small", "origin-unknown", "from-another-site"]);

function outcomeOf(status: number, headers: Headers, text: string): Expected {
  if (status === 401 && headers.has("www-authenticate")) return "not signed in";
  return status === 403 && GATE_CODES.has(JSON.parse(text).code) ? "refused" : "let in";
}

type House = Awaited<ReturnType<typeof guardedHouse>>;

async function headersOf(house: House, asker: Asker): Promise<Record<string, string>> {
  switch (asker) {
    case "nobody":
      return SAME_ORIGIN;
    case "token":
      return house.token("owner", house.clock.nowUtcMs + 1000);
    case "expired": {
      const headers = await house.signedIn("owner");
      house.store.raw.exec("UPDATE session SET created_utc_ms = 0, seen_utc_ms = 0");
      return headers;
    }
    case "other-origin":
      return { ...(await house.signedIn("owner")), "sec-fetch-site": "cross-site" };
    case "unnamed-origin":
      return { cookie: (await house.signedIn("owner")).cookie };
    default:
      return house.signedIn(asker);
  }
}

describe("every route of the table, asked by everybody", () => {
  it.each(ASKERS)("%s gets in where the table says so, and nowhere else", async (asker) => {
    const house = await guardedHouse({ LEEBENCH_HOST: "0.0.0.0" });
    // There is an owner, so that the house is guarded.
    await house.signedIn("owner");
    const wrong: string[] = [];
    const seen = { "let in": 0, "not signed in": 0, refused: 0 };
    for (const row of ACCESS_TABLE) {
      const [method, path] = row;
      const address = path.replace(/:(\w+)/g, (_, name: string) => PLACES[name] ?? "none");
      const headers = { accept: "application/json", ...(await headersOf(house, asker)) };
      const answer = await house.app.request(address, { method, headers });
      const outcome = outcomeOf(answer.status, answer.headers, await answer.text());
      seen[outcome]++;
      if (outcome !== expected(row, asker)) wrong.push(`${method} ${path}: ${outcome} (${answer.status})`);
      if (answer.status >= 500 && answer.status !== 503) wrong.push(`${method} ${path}: ${answer.status}`);
    }
    expect(wrong).toEqual([]);
    expect(seen["let in"]).toBeGreaterThan(10);
  });

  it("refuses before anything is read or changed: the store is as it was", async () => {
    const house = await guardedHouse({ LEEBENCH_HOST: "0.0.0.0" });
    await house.signedIn("owner");
    const viewer = await house.signedIn("viewer");
    const before = house.store.raw.serialize();
    for (const [method, path, admits] of ACCESS_TABLE) {
      if (method === "GET" || admits === "anyone" || admits === "own-link" || admits === "viewer") continue;
      const address = path.replace(/:(\w+)/g, (_, name: string) => PLACES[name] ?? "none");
      for (const headers of [viewer, SAME_ORIGIN]) {
        const body = new URLSearchParams({
          name: "x",
          role: "owner",
          deed: "potId=p1&action=water&entryId=tick.12345678",
        });
        await house.app.request(address, { method, headers, body });
      }
    }
    expect(house.store.raw.serialize().equals(before)).toBe(true);
  });

  it("what the table does not name is not there, except for the owner to hear so", async () => {
    const house = await guardedHouse({ LEEBENCH_HOST: "0.0.0.0" });
    const owner = await house.signedIn("owner");
    const helper = await house.signedIn("helper");
    for (const [method, path] of [
      ["DELETE", "/pots/p1"],
      ["GET", "/.env"],
      ["PATCH", "/"],
      ["POST", "/house"],
    ] as const) {
      expect((await house.app.request(path, { method, headers: owner })).status).toBe(404);
      expect((await house.app.request(path, { method, headers: helper })).status).toBe(404);
      expect((await house.app.request(path, { method, headers: SAME_ORIGIN })).status).toBe(401);
    }
  });
});

describe("a link that carries its own permission", () => {
  it("sent again changes nothing more, and opens nothing else", async () => {
    const house = await guardedHouse({ LEEBENCH_HOST: "0.0.0.0" });
    await house.signedIn("owner");
    const { store, clock, app, post } = house;
    const deeds = [{ potId: "p1", action: "water" as const, amountMl: 500 }];
    const plan = barePlan({ nowUtcMs: clock.nowUtcMs, deeds });
    await store.plans.save(plan, { kind: "morning", madeUtcMs: clock.nowUtcMs });
    const at = { ...house.parts.post.signing, plan, madeUtcMs: clock.nowUtcMs, personId: "house" };
    const link = answerLinks(at).path("not-today");
    expect((await app.request(link)).status).toBe(200);
    await post(link, {});
    const once = await store.journal.list("yard");
    await post(link, {});
    expect(await store.journal.list("yard")).toEqual(once);
    const token = link.split("/").at(-1) ?? "";
    expect((await app.request("/pots", { headers: { authorization: `Bearer ${token}` } })).status).toBe(401);
    expect((await app.request(`/answer/${token.slice(0, -2)}AA`)).status).toBe(404);
    clock.nowUtcMs += 400 * 86_400_000;
    expect((await app.request(link)).status).toBe(410);
  });
});
