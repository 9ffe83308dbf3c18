import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { fetchWeather } from "../../../service/feed/fetch-weather.ts";
import type { WeatherAnswer } from "../../../service/feed/weather-ask.ts";
import { ANSWER_FAULTS } from "./answer-faults.ts";
import { COLUMN_FAULTS } from "./column-faults.ts";
import type { FaultCase } from "./fault-case.ts";
import { MEMBER_FAULTS } from "./member-faults.ts";
import { TRANSPORT_FAULTS } from "./transport-faults.ts";
import { NOW_UTC_MS } from "./wire-answers.ts";

export const FAULT_CASES: readonly FaultCase[] = [
  ...TRANSPORT_FAULTS,
  ...ANSWER_FAULTS,
  ...COLUMN_FAULTS,
  ...MEMBER_FAULTS,
];

export interface FaultRow {
  readonly behaviour: string;
  readonly expected: string;
  readonly seen: string;
  readonly tookMs: number;
}

const SITE = { id: "matrix", name: "Matrix", latDeg: 12.3, lonDeg: 45.6, elevationM: 20, zone: "Asia/Aden" };
const NOBODY = "http://127.0.0.1:9";

/** The answer of the real client to one behaviour, with limits small enough for a test. */
export async function faultAnswer(fault: FaultCase): Promise<WeatherAnswer> {
  const stage = await fault.start();
  // Short only where waiting is the point: a busy machine must not turn another fault into a timeout.
  const timeoutMs = fault.ends.includes("feed-timeout") ? 400 : 5000;
  const limits = { timeoutMs, maxBodyBytes: 2_000_000 };
  const feed = {
    ...DEFAULT_FEED_SETTINGS,
    ...limits,
    ensembleUrl: NOBODY,
    fallbackUrl: NOBODY,
    ...stage.feed,
  };
  try {
    return await fetchWeather({ site: SITE, feed, nowUtcMs: NOW_UTC_MS, pastDays: 2 });
  } finally {
    await stage.close();
  }
}

export async function faultRow(fault: FaultCase): Promise<FaultRow> {
  const began = performance.now();
  const seen = stateOf(await faultAnswer(fault));
  const tookMs = Math.round(performance.now() - began);
  return { behaviour: fault.behaviour, expected: fault.ends, seen, tookMs };
}

/** The state in which a call ended, in one line. */
export function stateOf(answer: WeatherAnswer): string {
  if (answer.ok) {
    const { members } = answer.value;
    const notes = [...new Set(answer.notes.map((note) => note.code))];
    return ["used", members === null ? "no members" : `${members.memberCount} members`, ...notes].join(", ");
  }
  const { code, data = {} } = answer.problems[0]!;
  const wait = data.retryAfterS === undefined ? "" : ` ${data.retryAfterS} s`;
  return `refused: ${code}, ${data.next}${wait}`;
}
