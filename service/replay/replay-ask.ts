import { nearestNames } from "../../core/mix/nearest-names.ts";
import type { Vessel } from "../../core/pot/vessel.ts";
import type { Outcome, Problem } from "../../core/problem.ts";
import { POLICIES } from "../../core/replay/policy-list.ts";
import { GARDEN_MIXES, GARDEN_POTS } from "../../core/replay/stage/garden.ts";
import { REPLAY_PLACES } from "./replay-places.ts";

/** What is to be replayed. */
export interface ReplayAsk {
  readonly placeIds: readonly string[];
  readonly groupIds: readonly string[];
  readonly policyIds: readonly string[];
  readonly years: readonly number[];
  readonly firstSeed: number;
  readonly seedCount: number;
  /** Null leaves every pot in the mix and the vessel that its group has in the garden. */
  readonly mixId: string | null;
  readonly vessel: Vessel | null;
  readonly bound: boolean;
}

/** What was typed, before it was checked. */
export type TypedAsk = Readonly<Partial<Record<keyof typeof OPTIONS, string>>>;

const OPTIONS = {
  place: "place",
  group: "group",
  policy: "policy",
  years: "years",
  seed: "seed",
  seeds: "seeds",
  mix: "mix",
  vessel: "vessel",
} as const;

const REAL_PLACES = REPLAY_PLACES.filter(({ real }) => real).map(({ id }) => id);
const MOST_SEEDS = 1000;
const MATERIALS: readonly Vessel["material"][] = ["plastic", "glazed", "unglazed", "fabric", "metal", "wood"];

const YEARS = ["2012", "2013", "2014", "2015"];
const USUAL_YEAR = ["2014"];
const GROUPS = GARDEN_POTS.map(({ pot }) => pot.groupId);
const PLACES = REPLAY_PLACES.map(({ id }) => id);
const POLICY_IDS = POLICIES.map(({ id }) => id);
const USUAL_POLICIES = POLICIES.filter(({ kind }) => kind !== "ablation").map(({ id }) => id);
const MIXES = GARDEN_MIXES.map(({ id }) => id);
const MOST_SEED = 2 ** 31 - 1;

/** Checks what was typed; every fault at once. */
export function readReplayAsk(typed: TypedAsk & { bound: boolean }): Outcome<ReplayAsk> {
  const problems: Problem[] = [];
  const listed = (name: keyof typeof OPTIONS, known: readonly string[], usual: readonly string[]) =>
    knownWords(problems, { name, text: typed[name], known }) ?? usual;
  const ask: ReplayAsk = {
    placeIds: listed("place", PLACES, REAL_PLACES),
    groupIds: listed("group", GROUPS, GROUPS),
    policyIds: listed("policy", POLICY_IDS, USUAL_POLICIES),
    years: listed("years", YEARS, USUAL_YEAR).map(Number),
    firstSeed: wholeNumber(problems, { name: "seed", text: typed.seed, usual: 1, least: 0, most: MOST_SEED }),
    seedCount: wholeNumber(problems, {
      name: "seeds",
      text: typed.seeds,
      usual: 1,
      least: 1,
      most: MOST_SEEDS,
    }),
    mixId: listed("mix", MIXES, []).at(0) ?? null,
    vessel: vesselOf(typed.vessel, problems),
    bound: typed.bound,
  };
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: ask };
}

/** The words of a list that are known, in the order in which they are known; null when nothing was typed. */
function knownWords(
  problems: Problem[],
  of: { name: string; text: string | undefined; known: readonly string[] },
): string[] | null {
  const words = listOf(of.text);
  problems.push(...words.flatMap((given) => unknownWord(of.name, given, of.known)));
  return words.length === 0 ? null : of.known.filter((id) => words.includes(id));
}

function listOf(text: string | undefined): string[] {
  return (text ?? "")
    .split(",")
    .map((word) => word.trim())
    .filter((word) => word !== "");
}

function unknownWord(name: string, given: string, known: readonly string[]): Problem[] {
  if (known.includes(given)) return [];
  return [
    { code: "not-one-of", path: [`--${name}`], data: { given, nearest: nearestNames(given, known), known } },
  ];
}

function wholeNumber(
  problems: Problem[],
  of: { name: string; text: string | undefined; usual: number; least: number; most: number },
): number {
  if (of.text === undefined) return of.usual;
  const value = Number(of.text);
  if (Number.isInteger(value) && value >= of.least && value <= of.most) return value;
  const { least, most } = of;
  problems.push({
    code: "not-a-whole-number",
    path: [`--${of.name}`],
    data: { given: of.text, least, most },
  });
  return of.usual;
}

/** Rim x base x height in cm, and the material, e.g. 24x18x20:unglazed. */
function vesselOf(text: string | undefined, problems: Problem[]): Vessel | null {
  if (text === undefined) return null;
  const match = /^([\d.]+)x([\d.]+)x([\d.]+)(?::([a-z]+))?$/.exec(text.trim());
  const [topCm, baseCm, heightCm] = (match ?? []).slice(1, 4).map(Number) as [number, number, number];
  const material = MATERIALS.find((one) => one === (match?.[4] ?? "plastic"));
  const measures = [topCm, baseCm, heightCm].every((cm) => cm >= 4 && cm <= 120);
  if (match === null || material === undefined || !measures) {
    problems.push({
      code: "not-a-vessel",
      path: ["--vessel"],
      data: {
        given: text,
        expected: "rim x base x height in cm, 4 to 120, and a material",
        example: "24x18x20:unglazed",
        materials: MATERIALS,
      },
    });
    return null;
  }
  return { shape: "round", topCm, baseCm, heightCm, material, rimGapCm: 2 };
}
