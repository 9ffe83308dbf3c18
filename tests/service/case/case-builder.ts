import type { WrittenCase } from "../../../service/case/write-case.ts";

/** One sensible written case; each test changes one thing in a copy of its own. */
export function writtenCase(): WrittenCase {
  const hours = 72;
  const column = (value: number) => Array.from({ length: hours }, () => value);
  return {
    today: "2031-03-05T06:00Z",
    collection: {
      site: { id: "yard", name: "Yard", latDeg: 41.2, lonDeg: -3.1, elevationM: 600, zone: "Europe/Madrid" },
      spots: [
        {
          id: "step",
          name: "Step",
          kind: "open",
          skyFrac: 1,
          sunFrac: 1,
          windFrac: 1,
          rainFrac: 1,
          nightWarmthC: 0,
          walkOrder: 1,
        },
      ],
      mixes: [
        {
          id: "plain",
          name: "Plain",
          recipe: {
            kind: "parts",
            parts: [
              { component: "coco-peat", parts: 2 },
              { component: "perlite", parts: 1 },
            ],
          },
        },
      ],
      pots: [
        {
          id: "bay",
          name: "Bay",
          groupId: "citrus",
          canopyWidthCm: 40,
          plantHeightCm: 60,
          firstSpotId: "step",
        },
      ],
    },
    journal: [
      {
        id: "e1",
        at: "2031-03-03T08:00Z",
        recordedAt: "2031-03-03T08:00Z",
        potId: "bay",
        body: {
          kind: "planted",
          vessel: { shape: "round", topCm: 30, baseCm: 22, heightCm: 28, material: "plastic" },
          mixId: "plain",
          roots: "undisturbed",
        },
      },
    ],
    weather: {
      start: "2031-03-03T06:00Z",
      fetchedAt: "2031-03-05T05:30Z",
      hours: { tempC: column(15), dewPointC: column(8), rainMm: column(0), windMPerS: column(2) },
      members: { tempC: [column(14), column(16)], rainMm: [column(0), column(0.1)] },
    },
  };
}
