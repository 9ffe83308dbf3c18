import { Validator } from "@seriousme/openapi-schema-validator";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { plan } from "../../../core/plan/make-plan.ts";
import { API_ROUTES } from "../../../service/api/api-routes.ts";
import { openApiDocument } from "../../../service/api/openapi.ts";
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
    const { ask } = await apiHouse({ plan });
    const made = await ask("POST", "/sites/yard/plan");
    expect([made.status, made.json?.problems]).toEqual([201, undefined]);
    const places: Record<string, string> = { siteId: "yard", potId: "p1", spotId: "steps", mixId: "plain" };
    let checked = 0;
    for (const { id, method, path } of API_ROUTES) {
      if (method !== "GET" || /component|group/i.test(id.replace("listOwn", ""))) continue;
      const { status, json } = await ask(
        "GET",
        path.replace(/\{(\w+)\}/g, (_, name: string) => places[name] ?? name),
      );
      expect(status, `${id} ${JSON.stringify(json).slice(0, 200)}`).toBe(200);
      expect(schemaFaults(`${id}Answer`, json), id).toEqual([]);
      checked++;
    }
    expect(checked).toBeGreaterThanOrEqual(17);
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
