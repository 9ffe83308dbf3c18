import { Validator } from "@seriousme/openapi-schema-validator";
import { Ajv2020 } from "ajv/dist/2020.js";
import sharp from "sharp";
import { describe, expect, it, onTestFinished } from "vitest";
import { plan } from "../../../core/plan/make-plan.ts";
import { API_ROUTES } from "../../../service/api/api-routes.ts";
import { openApiDocument } from "../../../service/api/openapi.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { serveHttp } from "../feed/loopback-server.ts";
import { tempFolder } from "../store/test-store.ts";
import { apiHouse } from "./ask-api.ts";

const document = openApiDocument(API_ROUTES);

/** Checks a value by a schema of the document, every reference resolved within it. */
function schemaFaults(name: string, value: unknown): unknown {
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  ajv.addFormat("uri", true);
  ajv.addFormat("base64", true);
  ajv.addSchema({ $id: "doc", components: document.components } as object);
  const check = ajv.compile({ $ref: `doc#/components/schemas/${name}` });
  return check(value) ? [] : check.errors;
}

describe("the OpenAPI document", () => {
  // Independent validator with the OpenAPI Initiative's own schema of version 3.1.
  it("is valid by the schema of OpenAPI 3.1, every reference resolved", async () => {
    const validator = new Validator();
    expect(await validator.validate(structuredClone(document))).toEqual({ valid: true });
    expect(validator.version).toBe("3.1");
    expect(() => validator.resolveRefs()).not.toThrow();
  });

  it("is what the house serves, beside a plain page of every route", async () => {
    const { ask, app } = await apiHouse();
    expect((await ask("GET", "/openapi.json")).json).toEqual(JSON.parse(JSON.stringify(document)));
    const page = await (await app.request("/api/v1/reference")).text();
    for (const { path } of API_ROUTES) expect(page).toContain(`/api/v1${path}`);
  });

  it("tells the shape of what is answered", async () => {
    const feed = await serveHttp((request, response) =>
      response.end(
        JSON.stringify(
          request.url?.includes("search")
            ? { results: [{ id: 1, name: "Quay", latitude: 1, longitude: 2, timezone: "UTC" }] }
            : { elevation: [12] },
        ),
      ),
    );
    onTestFinished(() => feed.close());
    const { url } = feed;
    const hosts = { ...DEFAULT_FEED_SETTINGS, geocodingUrl: url, elevationUrl: url };
    const { ask } = await apiHouse({ plan, feed: hosts, backupDir: tempFolder() });
    const made = await ask("POST", "/sites/yard/plan");
    expect([made.status, made.json?.problems]).toEqual([201, undefined]);
    const fromPost = async (path: string, body: unknown, headers = {}) => {
      const { status, json } = await ask("POST", path, { body, headers });
      expect(status, `${path} ${JSON.stringify(json)}`).toBe(201);
      return json;
    };
    const personId = (await fromPost("/people", { name: "Ann" })).id;
    const channel = await fromPost(`/people/${personId}/channels`, {
      kind: "mail",
      address: "ann@host.example",
    });
    const drawn = sharp({ create: { width: 9, height: 9, channels: 3, background: "#375" } });
    const photo = await fromPost(
      "/sites/yard/pots/p1/photos?text=New%20leaf",
      Uint8Array.from(await drawn.png().toBuffer()),
      { "content-type": "image/png" },
    );
    const places: Record<string, string> = {
      siteId: "yard",
      potId: "p1",
      spotId: "steps",
      mixId: "plain",
      planId: String((await ask("GET", "/sites/yard/plans")).json.items[0].id),
      photoId: photo.id,
      personId,
      channelId: channel.id,
      copyName: (await fromPost("/copies", undefined)).name,
    };
    const asked: Record<string, string> = {
      searchPlaces: "?name=Quay",
      getElevation: "?latDeg=52.5&lonDeg=-1",
    };
    /** Nothing of the grower's own stands there. */
    const empty = new Set(["getComponent", "getGroup"]);
    let checked = 0;
    for (const { id, method, path, answerType } of API_ROUTES) {
      if (method !== "GET" || empty.has(id)) continue;
      const filled = path.replace(/\{(\w+)\}/g, (_, name: string) => places[name] ?? name);
      const { status, json, answer } = await ask("GET", filled + (asked[id] ?? ""));
      expect(status, `${id} ${JSON.stringify(json).slice(0, 200)}`).toBe(200);
      expect(answer.headers.get("content-type"), id).toBe(answerType ?? "application/json");
      if (answerType === undefined) expect(schemaFaults(`${id}Answer`, json), id).toEqual([]);
      checked++;
    }
    expect(checked).toBe(API_ROUTES.filter(({ method }) => method === "GET").length - empty.size);
    const parts = [
      { component: "pumice", parts: 2 },
      { component: "coco-peat", parts: 1 },
    ];
    const vessel = { shape: "round", topCm: 26, baseCm: 20, heightCm: 24, material: "plastic" };
    const figures = await ask("POST", "/sites/yard/mix-figures", { body: { parts, vessel } });
    expect([figures.status, schemaFaults("mixFiguresAnswer", figures.json)]).toEqual([200, []]);
    const batch = await ask("POST", "/sites/yard/batch", { body: { parts, pots: [{ count: 3, vessel }] } });
    expect([batch.status, schemaFaults("batchAnswer", batch.json)]).toEqual([200, []]);
  });
});
