import { describe, expect, it } from "vitest";
import { ACCESS_TABLE } from "../../service/access/access-table.ts";
import { guardedHouse } from "../service/access/guarded-house.ts";

describe("the access table", () => {
  it("has a row for every route that is served, and none for another", async () => {
    const { app } = await guardedHouse();
    const served = new Set(
      app.routes.filter(({ method }) => method !== "ALL").map(({ method, path }) => `${method} ${path}`),
    );
    const rows = ACCESS_TABLE.map(([method, path]) => `${method} ${path}`);
    expect(
      [...served].filter((route) => !rows.includes(route)),
      "add these to service/access/access-table.ts",
    ).toEqual([]);
    expect(rows.filter((route) => !served.has(route))).toEqual([]);
    expect(new Set(rows).size).toBe(rows.length);
  });
});
