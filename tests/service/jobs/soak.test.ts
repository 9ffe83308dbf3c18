import { expect, it } from "vitest";
import { soak } from "../../drills/soak-run.ts";

/** The short form of tests/drills/soak.ts: half an hour and 50 connections by npm run drill. */
it("under load, pulling and planning, nothing goes amiss, and a kill leaves everything that was acknowledged", async () => {
  const result = await soak({ minutes: 0.06, connections: 6, thinkMs: 40, seed: 3 });
  expect(result.faults).toEqual([]);
  expect(result.requests).toBeGreaterThan(30);
  expect(result.plans).toBeGreaterThan(0);
}, 60_000);
