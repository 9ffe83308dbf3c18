import { expect, it } from "vitest";
import { killNine } from "../../drills/kill-nine-run.ts";

/** The short form of tests/drills/kill-nine.ts. */
it("killed in the middle of its work, the service has lost nothing that it acknowledged and sent no brief under two names", async () => {
  const { faults, ...counts } = await killNine({ kills: 2, speed: 10_000, seed: 5 });
  expect(faults).toEqual([]);
  expect(counts.mornings).toBeGreaterThan(0);
  expect(counts.entriesAcknowledged).toBeGreaterThan(0);
  expect(counts.messagesTaken).toBeGreaterThanOrEqual(counts.mornings);
}, 60_000);
