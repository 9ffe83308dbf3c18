import { describe, expect, it } from "vitest";
import { forecastRainMm } from "../../../../core/replay/forecast/rain-scores.ts";
import { seededRandom } from "../../../../core/weather/seeded-random.ts";
import { correlation, hoursOfLead, issueOf, issuesOf, LEADS, MEMBERS, mean, rms } from "./issues.ts";

const RUNS = issuesOf("seattle", { seed: 3, memberCount: 0 });
const ENSEMBLES = issuesOf("seattle", { seed: 3, memberCount: MEMBERS });
/** Ensembles are looked at on every second morning only: they take longest. */
const ENSEMBLE_STEP_DAYS = 2;

/** Errors of the single run by lead day, and what the ensembles said, over four years. */
const found = temperatureErrors();
const told = ensemblesTold();

/**
 * Errors by lead day, °C: United States city forecasts 2021-22 for days 0 to 2 [NWSCITIES2022], Japan's weekly forecasts for days
 * 2 to 7 [JMA2023]; our synthesis of the two, read-in-source. Tolerance 0.1: single towns and models differ by more.
 */
const MAXIMUM_RMSE_C = [1.4, 1.6, 1.7, 1.8, 2.0, 2.2, 2.4, 2.7];
const MINIMUM_RMSE_C = [1.2, 1.5, 1.6, 1.7, 1.8, 2.0, 2.2, 2.5];

describe("temperature of generated forecasts", () => {
  it.each(MAXIMUM_RMSE_C.map((rmseC, lead) => ({ lead, rmseC })))("maximum, day $lead: $rmseC °C", (row) => {
    expect(Math.abs(rms(found.max[row.lead]!) - row.rmseC)).toBeLessThan(0.1);
  });

  it.each(MINIMUM_RMSE_C.map((rmseC, lead) => ({ lead, rmseC })))("minimum, day $lead: $rmseC °C", (row) => {
    expect(Math.abs(rms(found.min[row.lead]!) - row.rmseC)).toBeLessThan(0.1);
  });

  /** Seattle 2021-22, maximum; read-in-source: 1.50 at 24 h, which lies between the morning's own day and the next. */
  it("errs as Seattle's did: 1.5 °C a day ahead", () => {
    expect(Math.abs((rms(found.max[0]!) + rms(found.max[1]!)) / 2 - 1.5)).toBeLessThan(0.1);
  });

  it("errs alike on neighbouring days: 0.25 to 0.27 in Seattle", () => {
    expect(Math.abs(correlation(found.max[1]!.slice(1), found.max[1]!.slice(0, -1)) - 0.25)).toBeLessThan(
      0.1,
    );
  });

  it("mends the last forecast: 48 h with 24 h 0.88 in Seattle, 0.71 in New York, 0.89 and 0.83 elsewhere", () => {
    const both = correlation(found.max[2]!.slice(0, -1), found.max[1]!.slice(1));
    expect(Math.abs(both - 0.85)).toBeLessThan(0.1);
  });

  it("errs by day as by night to some degree: 0.21 to 0.36", () => {
    const both = correlation(found.max[1]!, found.min[1]!);
    // 0.41: the hours between the extremes are shared.
    expect(both).toBeGreaterThan(0.16);
    expect(both).toBeLessThan(0.45);
  });
});

/**
 * Hits (share of rain that was told) and false alarms (share of told rain that did not fall), reckoned with the
 * bivariate normal law from base, bias and correlation, beside what was measured. [NWSCITIES2022, JMA2023, AAGAM2026] read-in-source.
 */
const RAIN_TABLES = [
  {
    place: "Seattle 24 h, 1 mm",
    base: 0.36,
    bias: 1.34,
    rho: 0.82,
    hits: 0.873,
    alarms: 0.349,
    measured: [0.87, 0.35],
  },
  {
    place: "New York 24 h, 1 mm",
    base: 0.3,
    bias: 1.36,
    rho: 0.73,
    hits: 0.783,
    alarms: 0.424,
    measured: [0.78, 0.43],
  },
  {
    place: "Hokkaido day 7",
    base: 0.35,
    bias: 0.615,
    rho: 0.52,
    hits: 0.393,
    alarms: 0.36,
    measured: [0.4, 0.35],
  },
  {
    place: "India, 15.6 mm",
    base: 0.187,
    bias: 1.14,
    rho: 0.64,
    hits: 0.556,
    alarms: 0.512,
    measured: [0.55, 0.51],
  },
] as const;

describe("rain of generated forecasts", () => {
  it("has four tables", () => expect(RAIN_TABLES).toHaveLength(4));

  it.each(RAIN_TABLES)(
    "$place: hits $hits, false alarms $alarms",
    ({ base, bias, rho, hits, alarms, measured }) => {
      const random = seededRandom(5);
      const law = { wetShareFrac: base, scaleMm: 6 };
      let [both, told, fell] = [0, 0, 0];
      for (let day = 0; day < 200_000; day++) {
        const score = random.normal();
        const forecast = forecastRainMm({
          law,
          score,
          error: random.normal(),
          correlation: rho,
          frequencyBias: bias,
        });
        const truth = forecastRainMm({ law, score, error: 0, correlation: 1, frequencyBias: 1 });
        if (forecast > 0) told++;
        if (truth > 0) fell++;
        if (forecast > 0 && truth > 0) both++;
      }
      // 200 000 drawn days are known to 0.003.
      expect(Math.abs(both / fell - hits)).toBeLessThan(0.005);
      expect(Math.abs(1 - both / told - alarms)).toBeLessThan(0.005);
      expect(Math.abs(both / fell - measured[0])).toBeLessThan(0.015);
      expect(Math.abs(1 - both / told - measured[1])).toBeLessThan(0.015);
    },
  );
});

/** Hannover, ensemble mean a day ahead, 2015-20: spread 0.68 over RMSE 1.33, our reckoning from open data; read-in-source. */
describe("the ensemble", () => {
  it("is too sure of the temperature: its spread is half of its error a day ahead", () => {
    const ratio = mean(told.map(({ spreadC }) => spreadC)) / rms(told.map(({ errorC }) => errorC));
    expect(Math.abs(ratio - 0.68 / 1.33)).toBeLessThan(0.05);
  });

  /**
   * Innsbruck, 11 members, sums of days 5 to 8: share of cases in which it rained more when the members gave the share named
   * [GEFSINNSBRUCK, our reckoning; read-in-source], and ours for Seattle's days 5 to 7 without a steady bias. Ours mislead in the same
   * direction; less so where they say rain, because members at Innsbruck are nearly twice too wet besides.
   */
  it.each([
    { aboveMm: 1, share: "0 to 0.1", bin: 0, seen: 0.1, ours: 0.11 },
    { aboveMm: 1, share: "over 0.9", bin: 5, seen: 0.74, ours: 0.84 },
    { aboveMm: 5, share: "0 to 0.1", bin: 0, seen: 0.1, ours: 0.12 },
    { aboveMm: 5, share: "0.7 to 0.9", bin: 4, seen: 0.4, ours: 0.58 },
    { aboveMm: 5, share: "over 0.9", bin: 5, seen: 0.6, ours: 0.8 },
  ])("misleads about rain above $aboveMm mm where $share of its members say so", (row) => {
    const { fell, count, said } = reliability(row.aboveMm)[row.bin]!;
    // Some eighty cases in a class: 0.05 by chance.
    expect(Math.abs(fell / count - row.ours)).toBeLessThan(0.08);
    expect(row.bin === 0 ? fell / count - said / count : said / count - fell / count).toBeGreaterThan(0.03);
    expect(Math.abs(fell / count - row.seen)).toBeLessThan(Math.abs(said / count - row.seen));
  });
});

function temperatureErrors() {
  const byLead = () => Array.from({ length: LEADS }, (): number[] => []);
  const out = { max: byLead(), min: byLead() };
  for (let day = RUNS.firstIssue; day < RUNS.lastIssue; day++) {
    const { tempC } = issueOf(RUNS, day).hours;
    for (let lead = 0; lead < LEADS; lead++) {
      const { from, to } = hoursOfLead(RUNS, day, lead);
      const hours = tempC.subarray(from, to);
      out.max[lead]!.push(Math.max(...hours) - RUNS.daily.tempMaxC[day + lead]!);
      out.min[lead]!.push(Math.min(...hours) - RUNS.daily.tempMinC[day + lead]!);
    }
  }
  return out;
}

/** For each morning: error and spread of tomorrow's maximum, and sums of rain of days 5 to 7 by member and in truth. */
function ensemblesTold() {
  const out: { errorC: number; spreadC: number; sumsMm: Float64Array; fellMm: number }[] = [];
  for (let day = ENSEMBLES.firstIssue; day < ENSEMBLES.lastIssue; day += ENSEMBLE_STEP_DAYS) {
    const members = issueOf(ENSEMBLES, day).members!;
    const tomorrow = hoursOfLead(ENSEMBLES, day, 1);
    const maxima = Array.from({ length: MEMBERS }, (_, m) => {
      let most = -99;
      for (let hour = tomorrow.from; hour < tomorrow.to; hour++)
        most = Math.max(most, members.tempC[hour * MEMBERS + m]!);
      return most;
    });
    const { from } = hoursOfLead(ENSEMBLES, day, 5);
    const { to } = hoursOfLead(ENSEMBLES, day, 7);
    const sumsMm = new Float64Array(MEMBERS);
    for (let i = from * MEMBERS; i < to * MEMBERS; i++) sumsMm[i % MEMBERS]! += members.rainMm[i]!;
    out.push({
      errorC: mean(maxima) - ENSEMBLES.daily.tempMaxC[day + 1]!,
      spreadC: rms(maxima.map((one) => one - mean(maxima))),
      sumsMm,
      fellMm: ENSEMBLES.daily.rainMm.subarray(day + 5, day + 8).reduce((a, b) => a + b, 0),
    });
  }
  return out;
}

/** By share of members, in the source's steps: to 0.1, 0.3, 0.5, 0.7, 0.9, 1. */
function reliability(aboveMm: number): { fell: number; count: number; said: number }[] {
  const bins = Array.from({ length: 6 }, () => ({ fell: 0, count: 0, said: 0 }));
  for (const { sumsMm, fellMm } of told) {
    const share = sumsMm.filter((mm) => mm > aboveMm).length / MEMBERS;
    const bin = bins[[0.1, 0.3, 0.5, 0.7, 0.9].filter((edge) => share > edge).length]!;
    bin.count++;
    bin.said += share;
    if (fellMm > aboveMm) bin.fell++;
  }
  return bins;
}
