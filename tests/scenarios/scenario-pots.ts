import type { EntryBody, JournalEntry, RootWork } from "../../core/journal/entry.ts";
import type { Mix } from "../../core/mix/mix.ts";
import type { GroupId } from "../../core/plant/group.ts";
import type { Pot } from "../../core/pot/pot.ts";
import type { Vessel } from "../../core/pot/vessel.ts";
import type { Spot, SpotId } from "../../core/site/spot.ts";
import { HOUR_MS } from "../../core/weather/weather.ts";

/** A pot as a scenario tells it; days count back from this morning. */
export interface PotStory {
  readonly id: string;
  readonly group: GroupId;
  /** Rim width; the rest follows a common pot of that size. */
  readonly rimCm?: number;
  readonly vessel?: Partial<Vessel>;
  readonly mix?: "gritty" | "peaty" | "potting";
  readonly canopyCm?: number;
  readonly tallCm?: number;
  readonly count?: number;
  readonly at?: SpotId;
  readonly plantedDaysAgo?: number;
  readonly roots?: RootWork;
  readonly plantedInto?: "dry" | "moist" | "watered-in";
  /** Mornings on which it was watered until it ran through. */
  readonly wateredDaysAgo?: readonly number[];
  readonly also?: readonly { readonly daysAgo: number; readonly body: EntryBody }[];
}

export const SPOTS: readonly Spot[] = [
  spot({ id: "bench", walkOrder: 1 }),
  spot({ id: "wall", walkOrder: 2, skyFrac: 0.6, windFrac: 0.5, nightWarmthC: 1.5 }),
  spot({
    id: "eave",
    kind: "roof-edge",
    walkOrder: 3,
    skyFrac: 0.5,
    sunFrac: 0.7,
    windFrac: 0.5,
    rainFrac: 0.1,
    nightWarmthC: 1,
  }),
  spot({
    id: "shed",
    kind: "roofed",
    walkOrder: 4,
    skyFrac: 0.1,
    sunFrac: 0.1,
    windFrac: 0.05,
    rainFrac: 0,
    nightWarmthC: 3,
  }),
  spot({
    id: "sill",
    kind: "indoors",
    walkOrder: 5,
    skyFrac: 0.2,
    sunFrac: 0.5,
    windFrac: 0,
    rainFrac: 0,
    heatedToC: 15,
  }),
];

const LEAFY = new Set<GroupId>([
  "citrus",
  "olive",
  "pelargonium",
  "hibiscus",
  "fig-bonsai",
  "bougainvillea",
  "other-leafy",
]);

export const MIXES: readonly Mix[] = [
  {
    id: "potting",
    name: "Potting",
    recipe: {
      kind: "parts",
      parts: [
        { component: "coco-peat", parts: 3 },
        { component: "pine-bark-fine", parts: 1 },
        { component: "perlite", parts: 1 },
      ],
    },
  },
  {
    id: "gritty",
    name: "Gritty",
    recipe: {
      kind: "parts",
      parts: [
        { component: "pumice", parts: 3 },
        { component: "coco-peat", parts: 1 },
        { component: "grit", parts: 1 },
      ],
    },
  },
  {
    id: "peaty",
    name: "Peaty",
    recipe: {
      kind: "parts",
      parts: [
        { component: "peat", parts: 3 },
        { component: "perlite", parts: 1 },
      ],
    },
  },
];

export function potOf(story: PotStory): Pot {
  const rimCm = story.rimCm ?? 22;
  return {
    id: story.id,
    name: story.id,
    groupId: story.group,
    ...(story.count === undefined ? {} : { count: story.count }),
    canopyWidthCm: story.canopyCm ?? rimCm * 1.3,
    plantHeightCm: story.tallCm ?? rimCm * 1.2,
    firstSpotId: story.at ?? "bench",
  };
}

export function entriesOf(story: PotStory, todayUtcMs: number): JournalEntry[] {
  const rimCm = story.rimCm ?? 22;
  const at = (daysAgo: number, clock: number) => todayUtcMs + (clock - 24 * daysAgo) * HOUR_MS;
  const planted: EntryBody = {
    kind: "planted",
    vessel: {
      shape: "round",
      topCm: rimCm,
      baseCm: rimCm * 0.75,
      heightCm: rimCm * 0.95,
      material: "plastic",
      rimGapCm: 2,
      ...story.vessel,
    },
    mixId: story.mix ?? (LEAFY.has(story.group) ? "potting" : "gritty"),
    roots: story.roots ?? "undisturbed",
    mixWet: story.plantedInto ?? "moist",
  };
  const told = [
    { atUtcMs: at(story.plantedDaysAgo ?? 27, 17), body: planted },
    ...(story.wateredDaysAgo ?? []).map((daysAgo) => ({
      atUtcMs: at(daysAgo, 7),
      body: { kind: "watered", given: { kind: "ran-through" } } as const,
    })),
    ...(story.also ?? []).map(({ daysAgo, body }) => ({ atUtcMs: at(daysAgo, 18), body })),
  ];
  return told.map(({ atUtcMs, body }, i) => ({
    id: `${story.id}-${i}`,
    potId: story.id,
    atUtcMs,
    recordedUtcMs: atUtcMs,
    body,
  }));
}

function spot(change: Partial<Spot> & Pick<Spot, "id" | "walkOrder">): Spot {
  return {
    name: change.id,
    kind: "open",
    skyFrac: 1,
    sunFrac: 1,
    windFrac: 0.8,
    rainFrac: 1,
    nightWarmthC: 0,
    carry: "same-level",
    ...change,
  };
}
