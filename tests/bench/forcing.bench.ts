import { forcingAtSpot } from "../../core/site/forcing-at-spot.ts";
import type { Site } from "../../core/site/site.ts";
import type { Spot } from "../../core/site/spot.ts";
import type { HoursReady } from "../../core/weather/hours-ready.ts";
import { seededRandom } from "../../core/weather/seeded-random.ts";

const SPOT_COUNT = 6;
const MEMBER_COUNT = 51;
const HOUR_COUNT = 336;
const ROUNDS = 20;

const SITE: Site = { id: "bench", name: "", latDeg: 43, lonDeg: 5, elevationM: 20, zone: "Europe/Paris" };
const OPEN: Spot = {
  id: "open",
  name: "",
  kind: "open",
  skyFrac: 0.8,
  sunFrac: 0.9,
  shade: [{ fromHour: 15, toHour: 19, sunFrac: 0.1 }],
  windFrac: 0.7,
  rainFrac: 1,
  nightWarmthC: 1,
  walkOrder: 1,
};
const EDGE = { heightM: 2, behindM: 0.6 };

/** One of each kind, twice, so that no pass can be left out. */
const SPOTS: Spot[] = [
  OPEN,
  { ...OPEN, id: "edge", kind: "roof-edge", roofEdge: EDGE },
  { ...OPEN, id: "roofed", kind: "roofed", rainFrac: 0 },
  { ...OPEN, id: "room", kind: "indoors", heatedToC: 12 },
  { ...OPEN, id: "yard", skyFrac: 0.4 },
  { ...OPEN, id: "porch", kind: "roof-edge", roofEdge: { ...EDGE, behindM: 1.2 } },
];

/** Speed of the forcing and what it leaves on the heap. */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const hours = inventedHours();
  const once = () => SPOTS.map((spot) => forcingAtSpot(hours, SITE, spot));
  for (let round = 0; round < 3; round++) once();
  const began = performance.now();
  const growth: number[] = [];
  let kept = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const before = heapBytes();
    kept = once().length;
    growth.push(heapBytes() - before);
  }
  const seconds = (performance.now() - began) / 1000;
  const done = ROUNDS * SPOT_COUNT * MEMBER_COUNT * HOUR_COUNT;
  const columnBytes = 5 * 8 * SPOT_COUNT * MEMBER_COUNT * HOUR_COUNT;
  // The middle round: one in which the collector ran would hide, or show, all that went before.
  const perHour = growth.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)]! / (SPOT_COUNT * HOUR_COUNT);
  return {
    name: `forcing, ${SPOT_COUNT} spots x ${MEMBER_COUNT} members x ${HOUR_COUNT} hours`,
    lines: [
      `${(done / seconds / 1e6).toFixed(2)} million spot-member-hours a second`,
      `${((1000 * seconds) / ROUNDS).toFixed(1)} ms for all six spots`,
      `heap beside the columns: ${perHour.toFixed(1)} bytes a spot-hour (${MEMBER_COUNT} members), garbage included`,
      `columns kept: ${(columnBytes / 1e6).toFixed(1)} MB (${kept} spots)`,
    ],
  };
}

/** Typed arrays live outside the heap that is counted here, so what is left is what the loops allocate. */
function heapBytes(): number {
  return process.memoryUsage().heapUsed;
}

function inventedHours(): HoursReady {
  const random = seededRandom(7);
  const column = (valueAt: (clock: number) => number) =>
    Float64Array.from({ length: HOUR_COUNT * MEMBER_COUNT }, (_, i) =>
      valueAt(Math.floor(i / MEMBER_COUNT) % 24),
    );
  const byHour = (value: number) => new Float64Array(HOUR_COUNT).fill(value);
  return {
    startUtcMs: Date.UTC(2026, 5, 1),
    hourCount: HOUR_COUNT,
    memberCount: MEMBER_COUNT,
    tempC: column((clock) => 20 + 7 * Math.cos(((clock - 14) / 12) * Math.PI) + random.normal()),
    dewPointC: column(() => 10 + random.normal()),
    rainMm: column(() => Math.max(0, 2 * random.normal() - 2)),
    windMPerS: column(() => 1 + 5 * random.uniform()),
    radiationMjPerM2: column((clock) => Math.max(0, 2.5 * Math.sin(((clock - 4) / 16) * Math.PI))),
    cloudFrac: column(() => random.uniform()),
    gustMPerS: byHour(8),
    weatherCode: byHour(1),
  };
}
