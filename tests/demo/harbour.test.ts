import { describe, expect, it } from "vitest";
import { demoCase } from "../../demo/demo-case.ts";
import { demoCollection } from "../../demo/harbour.ts";
import { demoJournal } from "../../demo/harbour-journal.ts";
import { readCase } from "../../service/case/case-schema.ts";
import { writeCase } from "../../service/case/write-case.ts";

const HOUR_MS = 3_600_000;

describe("the invented roof", () => {
  it("is some two dozen pots of many groups, each planted once in the diary", () => {
    const { pots } = demoCollection;
    expect(pots.length).toBeGreaterThanOrEqual(24);
    expect(new Set(pots.map(({ groupId }) => groupId)).size).toBeGreaterThanOrEqual(12);
    const planted = demoJournal(Date.UTC(2031, 4, 4, 9)).filter(({ body }) => body.kind === "planted");
    expect(planted.map(({ potId }) => potId).sort()).toEqual(pots.map(({ id }) => id).sort());
  });

  it("has a diary that lies in the past at every hour of the day", () => {
    for (let hour = 0; hour < 24; hour++) {
      const nowUtcMs = Date.UTC(2031, 4, 4) + hour * HOUR_MS;
      const journal = demoJournal(nowUtcMs);
      expect(journal.every(({ atUtcMs }) => atUtcMs < nowUtcMs)).toBe(true);
      expect(new Set(journal.map(({ id }) => id)).size).toBe(journal.length);
    }
  });

  it("passes as a case, like any grower's", async () => {
    const made = await demoCase(Date.UTC(2031, 4, 4, 9));
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(made.value.weather.origin.source).toBe("demo");
    const read = readCase(JSON.parse(JSON.stringify(writeCase(made.value))));
    expect(read).toEqual({ ok: true, value: made.value });
  });
});
