import { once } from "node:events";
import { createInterface } from "node:readline";
import { describe, expect, it } from "vitest";
import { commandHere } from "./command-here.ts";
import { runCommand, startCommand } from "./run-command.ts";

const DAY = {
  latDeg: 40,
  elevationM: 200,
  dayOfYear: 180,
  tempMinC: 14,
  tempMaxC: 27,
  windMPerS: 2,
  windHeightM: 2,
  radiationMjPerM2: 22,
  rhMeanFrac: 0.6,
};
const HOUR = {
  latDeg: 40,
  lonDeg: 5,
  elevationM: 200,
  dayOfYear: 180,
  hourStartUtc: 11.5,
  tempC: 25,
  dewPointC: 12,
  windMPerS: 2,
  windHeightM: 10,
  radiationMjPerM2: 2.8,
};
const VESSEL = { shape: "round", topCm: 20, baseCm: 14, heightCm: 18 };
const CURVE = { residualFrac: 0.02, saturatedFrac: 0.6, alphaPerCm: 0.15, n: 1.8 };

async function calc(what: string, lines: readonly unknown[], options: readonly string[] = []) {
  const input = lines.map((line) => (typeof line === "string" ? line : JSON.stringify(line))).join("\n");
  const { code, stdout, stderr } = await commandHere(["calc", what, ...options], { input });
  return {
    code,
    stderr,
    answers: stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line)),
  };
}

const codes = (answer: { error?: { code: string; path: string[] }[] }) =>
  answer.error?.map(({ code, path }) => [code, ...path].join(" "));

describe("leebench calc", () => {
  it.each<[string, object, string[]]>([
    [
      "et0-daily",
      DAY,
      [
        "et0Mm",
        "actualVapourPressureKPa",
        "windAt2mMPerS",
        "extraterrestrialMjPerM2",
        "clearSkyMjPerM2",
        "netRadiationMjPerM2",
      ],
    ],
    ["et0-hourly", HOUR, ["et0Mm", "extraterrestrialMjPerM2", "netRadiationMjPerM2"]],
    [
      "et0-temperature",
      { latDeg: 40, dayOfYear: 180, tempMinC: 14, tempMaxC: 27 },
      ["et0Mm", "extraterrestrialMjPerM2"],
    ],
    ["heat-index", { tempC: 34, rhFrac: 0.6 }, ["heatIndexC", "band"]],
    [
      "pot",
      {
        mix: [
          { component: "pumice", parts: 2 },
          { component: "coco-peat", parts: 1 },
        ],
        vessel: VESSEL,
      },
      [
        "volumeMl",
        "capacityMl",
        "capacityFrac",
        "airSpaceFrac",
        "totalPorosityFrac",
        "usableMl",
        "wetLayerCm",
        "dryDensityKgPerL",
        "shrinkFrac",
        "drainedMassKg",
      ],
    ],
    [
      "pot",
      { curve: CURVE, vessel: VESSEL },
      [
        "volumeMl",
        "capacityMl",
        "capacityFrac",
        "airSpaceFrac",
        "totalPorosityFrac",
        "usableMl",
        "wetLayerCm",
      ],
    ],
    [
      "porosity-test",
      { potMl: 1000, addedMl: 550, drainedMl: 150 },
      ["totalPorosityFrac", "airSpaceFrac", "capacityFrac"],
    ],
  ])("%s gives exactly its fields and the id back", async (what, line, fields) => {
    const { code, stderr, answers } = await calc(what, [{ id: "a", ...line }, line]);
    expect([code, stderr]).toEqual([0, ""]);
    expect(Object.keys(answers[0])).toEqual(["id", ...fields]);
    expect(Object.keys(answers[1])).toEqual(fields);
  });

  it("keeps the order, passes over blank lines, tells faults line by line and ends with 1", async () => {
    const { code, answers } = await calc("et0-daily", [
      { id: 1, ...DAY },
      "",
      "{ not json",
      { id: [3], ...DAY, latDeg: 91, tempMinC: "cold" },
      "   ",
      "7",
      { id: null, ...DAY },
    ]);
    expect(code).toBe(1);
    expect(answers.map(({ id }) => id)).toEqual([1, undefined, [3], undefined, null]);
    expect(answers.map(codes)).toEqual([
      undefined,
      ["not-json"],
      ["too-large latDeg", "wrong-type tempMinC"],
      ["wrong-type"],
      undefined,
    ]);
    expect(answers[4].et0Mm).toBe(answers[0].et0Mm);
  });

  it.each<[string, object, string[]]>([
    ["no humidity", { rhMeanFrac: undefined }, ["humidity-missing"]],
    ["humidity twice", { dewPointC: 10 }, ["humidity-given-twice"]],
    ["a least humidity alone", { rhMeanFrac: undefined, rhMinFrac: 0.4 }, ["missing rhMaxFrac"]],
    [
      "humidities the wrong way round",
      { rhMeanFrac: undefined, rhMinFrac: 0.8, rhMaxFrac: 0.5 },
      ["wrong-order rhMinFrac"],
    ],
    ["temperatures the wrong way round", { tempMinC: 28 }, ["wrong-order tempMinC"]],
    ["a slip in a name", { windMPerS: undefined, windMS: 2 }, ["missing windMPerS", "unknown-key windMS"]],
    ["percent for a share", { rhMeanFrac: 60 }, ["too-large rhMeanFrac"]],
  ])("et0-daily refuses %s", async (_what, change, expected) => {
    const { code, answers } = await calc("et0-daily", [{ ...DAY, ...change }]);
    expect([code, codes(answers[0])]).toEqual([1, expected]);
  });

  it.each([{ rhMaxFrac: 0.8, rhMinFrac: 0.4 }, { rhMeanFrac: 0.6 }, { rhMaxFrac: 0.8 }, { dewPointC: 12 }])(
    "et0-daily takes humidity as %j",
    async (humidity) => {
      const { rhMeanFrac: _none, ...rest } = DAY;
      const { code, answers } = await calc("et0-daily", [{ ...rest, ...humidity }]);
      expect([code, typeof answers[0].et0Mm]).toEqual([0, "number"]);
    },
  );

  it("with --steps shows the way, each step with its unit and equation", async () => {
    const { answers } = await calc("et0-hourly", [{ ...HOUR, coefficients: "asce-short" }], ["--steps"]);
    const steps = answers[0].steps as { name: string; value: number; unit: string; equation: string }[];
    expect(steps.length).toBeGreaterThan(5);
    expect(steps.at(-1)).toMatchObject({ name: "et0Mm", value: answers[0].et0Mm, unit: "mm" });
    expect(steps.every(({ equation }) => equation.length > 0)).toBe(true);
  });

  it.each<[string, object]>([
    ["et0-daily", DAY],
    ["et0-temperature", { latDeg: 40, dayOfYear: 180, tempMinC: 14, tempMaxC: 27 }],
    ["heat-index", { tempC: 34, rhFrac: 0.6 }],
    ["pot", { mix: [{ component: "pumice", parts: 1 }], vessel: VESSEL }],
    ["pot", { curve: CURVE, vessel: VESSEL }],
    ["porosity-test", { potMl: 1000, addedMl: 550, drainedMl: 150 }],
  ])("%s shows its way too, and the figures stay the same", async (what, line) => {
    const [shown, plain] = await Promise.all([calc(what, [line], ["--steps"]), calc(what, [line])]);
    const { steps, ...figures } = shown.answers[0];
    expect(figures).toEqual(plain.answers[0]);
    expect(steps.length).toBeGreaterThan(2);
    for (const step of steps) {
      expect(step).toEqual({
        name: expect.stringMatching(/^[a-z]/),
        value: expect.any(Number),
        unit: expect.stringMatching(/./),
        equation: expect.stringMatching(/./),
      });
    }
  });

  it.each<[string, string, object, string[] | undefined]>([
    [
      "a dew point just above the warmest",
      "et0-daily",
      { rhMeanFrac: undefined, dewPointC: 27.4 },
      undefined,
    ],
    [
      "one far above",
      "et0-daily",
      { rhMeanFrac: undefined, dewPointC: 28 },
      ["dew-point-above-temperature dewPointC"],
    ],
    [
      "more sun than a clear sky sends",
      "et0-daily",
      { radiationMjPerM2: 38 },
      ["radiation-above-clear-sky radiationMjPerM2"],
    ],
    ["a clear day", "et0-daily", { radiationMjPerM2: 31 }, undefined],
    [
      "an hour's dew point above its air",
      "et0-hourly",
      { dewPointC: 25.6 },
      ["dew-point-above-temperature dewPointC"],
    ],
    [
      "sun at midnight",
      "et0-hourly",
      { hourStartUtc: 0, radiationMjPerM2: 1 },
      ["radiation-above-clear-sky radiationMjPerM2"],
    ],
    ["twilight", "et0-hourly", { hourStartUtc: 0, radiationMjPerM2: 0.04 }, undefined],
  ])("reckons %s and asks where it is odd", async (_what, kind, change, asked) => {
    const { code, answers } = await calc(kind, [{ ...(kind === "et0-daily" ? DAY : HOUR), ...change }]);
    const { questions, ...figures } = answers[0];
    expect([code, typeof figures.et0Mm, codes({ error: questions })]).toEqual([0, "number", asked]);
  });

  it.each<[string, number, string]>([
    ["{ tempC: 30 }", 3, "mend"],
    ['{"tempC":30,"rhFrac":O.5}', 22, "mend"],
    ['{"tempC":30,"rhFrac":0.5', 25, "ends too soon"],
    ['{"tempC":30,"rhFrac":0.5} {"tempC":31,"rhFrac":0.5}', 27, "whole value"],
  ])("tells where %s stops being JSON and what to do", async (text, column, next) => {
    const { answers } = await calc("heat-index", [{ tempC: 30, rhFrac: 0.5 }, "", text]);
    expect(answers[1].error[0]).toMatchObject({
      code: "not-json",
      data: { line: 3, column, next: expect.stringContaining(next) },
    });
  });

  it("answers each line before the next is written", async () => {
    const child = startCommand(["calc", "heat-index"]);
    const answers = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    for (const tempC of [28, 31, 34]) {
      child.stdin.write(`{"id":${tempC},"tempC":${tempC},"rhFrac":0.6}\n`);
      const answer = await answers.next();
      expect(JSON.parse(answer.value ?? "null")).toMatchObject({ id: tempC, heatIndexC: expect.any(Number) });
    }
    child.stdin.end();
    expect(await once(child, "exit")).toEqual([0, null]);
  });

  it("asks about a pot that is odd but possible, and refuses one that cannot be", async () => {
    const { answers } = await calc("pot", [
      { curve: CURVE, vessel: { ...VESSEL, baseCm: 24 } },
      { curve: { ...CURVE, n: 1 }, vessel: { ...VESSEL, heightCm: -1 } },
      { mix: [{ component: "pummice", parts: 0 }], vessel: VESSEL },
      { mix: [{ component: "pumice", parts: 1 }], curve: CURVE, vessel: VESSEL },
      { vessel: VESSEL },
    ]);
    expect(answers[0].capacityMl).toBeGreaterThan(0);
    expect(answers[0].questions[0]).toMatchObject({
      code: "base-wider-than-rim",
      path: ["vessel", "baseCm"],
    });
    expect(answers.slice(1).every(({ error }) => error.length > 0)).toBe(true);
    expect(answers[2].error[0].data.nearest[0]).toBe("pumice");
  });

  it("explains a porosity test that cannot be right", async () => {
    const { answers } = await calc("porosity-test", [{ potMl: 1000, addedMl: 500, drainedMl: 600 }]);
    expect(codes(answers[0])).toEqual(["drained-more-than-poured drainedMl"]);
  });

  it("splits lines at line feeds only and minds Windows line ends", async () => {
    const line = `{"id":"a\u2028b","tempC":30,"rhFrac":0.5}`;
    const { code, answers } = await calc("heat-index", [`${line}\r`, line]);
    expect([code, answers.map(({ id }) => id)]).toEqual([0, ["a\u2028b", "a\u2028b"]]);
  });

  it("streams a hundred thousand lines in their order", async () => {
    const input = Array.from({ length: 100_000 }, (_, id) => `{"id":${id},"tempC":30,"rhFrac":0.5}`).join(
      "\n",
    );
    const { code, stdout } = await runCommand(["calc", "heat-index"], { input });
    const ids = stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line).id);
    expect(code).toBe(0);
    expect(ids).toHaveLength(100_000);
    expect(ids.every((id, index) => id === index)).toBe(true);
  });
});
