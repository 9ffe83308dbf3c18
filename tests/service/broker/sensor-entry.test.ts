import { describe, expect, it } from "vitest";
import { sensorEntry } from "../../../service/broker/sensor-entry.ts";
import { pot } from "../store/bench.ts";

const NOW = Date.parse("2031-05-02T06:10Z");
const read = (topic: string, payload: string, nowUtcMs = NOW) =>
  sensorEntry({ topic, payload }, { pots: [pot()], nowUtcMs });

describe("a sensor's reading", () => {
  it("is a weighing or a check of the pot that it names, by id or by name", () => {
    expect(read("bench/readings/p1/weight-kg", "9.4")).toMatchObject({
      potId: "p1",
      body: { kind: "weighed", massKg: 9.4 },
    });
    expect(read("bench/readings/lemon/weight-kg", '{"value":9.4,"unit":"kg"}')).toMatchObject({
      potId: "p1",
    });
    const feels = ["0", "32.9", "33", "66", "67", "100"].map(
      (value) => read("b/p1/moisture-percent", value)?.body,
    );
    expect(feels.map((body) => (body?.kind === "checked" ? body.feel : null))).toEqual([
      "light",
      "light",
      "middling",
      "middling",
      "heavy",
      "heavy",
    ]);
  });

  it("is one entry an hour", () => {
    const id = (minutes: number) => read("b/p1/weight-kg", "9", NOW + minutes * 60_000)?.id;
    expect(id(40)).toBe(id(0));
    expect(id(60)).not.toBe(id(0));
  });

  it.each([
    ["b/p2/weight-kg", "9"],
    ["b/p1/height-cm", "9"],
    ["b/p1/weight-kg", "0"],
    ["b/p1/weight-kg", "-1"],
    ["b/p1/weight-kg", "1e9"],
    ["b/p1/weight-kg", "heavy"],
    ["b/p1/weight-kg", '{"value":"9"}'],
    ["b/p1/weight-kg", "null"],
    ["b/p1/moisture-percent", "101"],
    ["", "9"],
  ])("on %s of %s is not used", (topic, payload) => {
    expect(read(topic, payload)).toBeNull();
  });
});
