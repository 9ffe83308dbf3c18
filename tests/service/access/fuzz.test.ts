import { expect, it } from "vitest";
import { fuzz } from "../../drills/fuzz-run.ts";

/** The short form of the drill; 200,000 by npm run drill. */
it("no request breaks the house, keeps it waiting, or changes anything when refused", async () => {
  const { faults, requests, accepted, refused } = await fuzz({ requests: 1200, seed: 4711 });
  expect(faults).toEqual([]);
  expect(requests).toBe(1200);
  // Both kinds were met often enough for the check to mean something.
  expect(Math.min(accepted, refused)).toBeGreaterThan(150);
});
