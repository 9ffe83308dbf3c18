import { forcingAtSpot } from "../../core/site/forcing-at-spot.ts";
import type { Site } from "../../core/site/site.ts";
import type { Spot } from "../../core/site/spot.ts";
import type { HoursReady } from "../../core/weather/hours-ready.ts";
import { seededRandom } from "../../core/weather/seeded-random.ts";

const SPOT_COUNT = 6;
const MEMBER_COUNT = 51;
const HOUR_COUNT = 336;
const ROUNDS = 20;
/** Until the compiler has settled: interpreted code boxes every number, which is no allocation of ours. */
const WARM_ROUNDS = 60;

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

/** Speed of the forcing, and what a second run takes from the heap and outside it. */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const hours = inventedHours(MEMBER_COUNT);
  for (let round = 0; round < WARM_ROUNDS; round++) forceAll(hours);
  const began = performance.now();
  for (let round = 0; round < ROUNDS; round++) forceAll(hours);
  const seconds = (performance.now() - began) / 1000;
  const done = ROUNDS * SPOT_COUNT * MEMBER_COUNT * HOUR_COUNT;
  const taken = takenPerSpotHour(hours);
  const single = inventedHours(1);
  for (let round = 0; round < WARM_ROUNDS; round++) forceAll(single);
  const alone = takenPerSpotHour(single);
  const perMember = (taken.heapBytes - alone.heapBytes) / (MEMBER_COUNT - 1);
  return {
    name: `forcing, ${SPOT_COUNT} spots x ${MEMBER_COUNT} members x ${HOUR_COUNT} hours`,
    lines: [
      `${(done / seconds / 1e6).toFixed(2)} million spot-member-hours a second`,
      `${((1000 * seconds) / ROUNDS).toFixed(1)} ms for all six spots`,
      `heap a spot-hour, garbage included: ${taken.heapBytes.toFixed(0)} bytes with ${MEMBER_COUNT} members, ` +
        `${alone.heapBytes.toFixed(0)} with one: ${perMember.toFixed(1)} a member more`,
      `arrays outside the heap a spot-hour: ${taken.arrayBytes.toFixed(0)} bytes; the five columns of ` +
        `${MEMBER_COUNT} members are ${5 * 8 * MEMBER_COUNT}`,
    ],
  };
}

function forceAll(hours: HoursReady) {
  return SPOTS.map((spot) => forcingAtSpot(hours, SITE, spot));
}

/** Growth by a spot-hour of a run: the middle of the rounds, because one with a collection in it shows less or more. */
function takenPerSpotHour(hours: HoursReady): { heapBytes: number; arrayBytes: number } {
  const heap: number[] = [];
  const arrays: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const before = process.memoryUsage();
    forceAll(hours);
    const after = process.memoryUsage();
    heap.push(after.heapUsed - before.heapUsed);
    arrays.push(after.arrayBuffers - before.arrayBuffers);
  }
  const middle = (values: number[]) => values.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)]!;
  const spotHours = SPOT_COUNT * HOUR_COUNT;
  return { heapBytes: middle(heap) / spotHours, arrayBytes: middle(arrays) / spotHours };
}

function inventedHours(memberCount: number): HoursReady {
  const random = seededRandom(7);
  const column = (valueAt: (clock: number) => number) =>
    Float64Array.from({ length: HOUR_COUNT * memberCount }, (_, i) =>
      valueAt(Math.floor(i / memberCount) % 24),
    );
  const byHour = (value: number) => new Float64Array(HOUR_COUNT).fill(value);
  return {
    startUtcMs: Date.UTC(2026, 5, 1),
    hourCount: HOUR_COUNT,
    memberCount,
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
