import type { z } from "zod";
import type { GroupValues } from "../../../core/plant/group.ts";
import type { Problem } from "../../../core/problem.ts";
import type { Typed } from "../forms/form-problems.ts";
import { choice, maybeNumber } from "../forms/typed-fields.ts";

/** Stands where a choice is left to the kind of plant. */
export const AS_KIND = "as-kind";

interface OwnNumber {
  readonly name: keyof GroupValues;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  /** What one of the unit is in the value's own; 1 when left out. */
  readonly one?: number;
}

const DEGREES = { unit: "°C", from: -60, to: 60 } as const;
const PERCENT = { unit: "%", from: 0, to: 100, one: 0.01 } as const;
const COEFFICIENT = { unit: "", from: 0, to: 3 } as const;

/** Figures of a kind of plant that a grower may know better for one pot, in the order in which they are asked. */
export const OWN_NUMBERS: readonly OwnNumber[] = [
  { name: "damageC", ...DEGREES },
  { name: "killC", ...DEGREES },
  { name: "cutWaterNightC", ...DEGREES },
  { name: "stopWaterNightC", ...DEGREES },
  { name: "heatC", ...DEGREES },
  { name: "refillFrac", ...PERCENT },
  { name: "restRefillFrac", ...PERCENT },
  { name: "depletionFrac", ...PERCENT },
  { name: "basalCoefficient", ...COEFFICIENT },
  { name: "restCoefficient", ...COEFFICIENT },
  { name: "wetBaseHours", unit: "", from: 0, to: 1000 },
  { name: "dryDays", unit: "", from: 0, to: 1000 },
  { name: "lightMjPerM2PerDay", unit: "MJ/m²", from: 0, to: 40 },
];

const YES_NO = ["yes", "no"] as const;

/** What is chosen rather than measured. `stopsWater` with "no" means that it is never left fully dry in the cold. */
export const OWN_CHOICES = {
  stopsWater: ["no"],
  growth: ["warm", "cool", "any"],
  fixedRest: YES_NO,
  leaflessIsRest: YES_NO,
  leafy: YES_NO,
  sap: ["none", "irritant", "toxic"],
} as const;

const choiceNames = Object.keys(OWN_CHOICES) as (keyof typeof OWN_CHOICES)[];

/** Fields of the form, to be spread into its schema. */
export const OWN_SHAPE: Record<string, z.ZodType<number | string | undefined>> = {
  ...Object.fromEntries(OWN_NUMBERS.map(({ name, from, to }) => [`own.${name}`, maybeNumber({ from, to })])),
  ...Object.fromEntries(
    choiceNames.map((name) => [`own.${name}`, choice([AS_KIND, ...OWN_CHOICES[name]]).optional()]),
  ),
};

/** The grower's own values from what was read; what is left to the kind is left out. */
export function ownOf(value: Readonly<Record<string, unknown>>): Partial<GroupValues> {
  const numbers = OWN_NUMBERS.flatMap(({ name, one = 1 }) => {
    const given = value[`own.${name}`];
    return typeof given === "number" ? [[name, inOwnUnit(given, one)]] : [];
  });
  const never = value["own.stopsWater"] === "no" ? [["stopWaterNightC", null]] : [];
  const choices = choiceNames.flatMap((name) => {
    const given = value[`own.${name}`];
    if (name === "stopsWater" || given === undefined || given === AS_KIND) return [];
    return [[name, given === "yes" ? true : given === "no" ? false : given]];
  });
  return Object.fromEntries([...numbers, ...never, ...choices]);
}

/** Own values as the text of their fields. */
export function typedOfOwn(own: Partial<GroupValues>): Typed {
  const numbers = OWN_NUMBERS.flatMap(({ name, one = 1 }) => {
    const value = own[name];
    return typeof value === "number" ? [[`own.${name}`, String(inShownUnit(value, one))]] : [];
  });
  const choices = choiceNames.map((name) => [`own.${name}`, chosenText(own, name)]);
  return Object.fromEntries([...choices, ...numbers]);
}

function chosenText(own: Partial<GroupValues>, name: keyof typeof OWN_CHOICES): string {
  if (name === "stopsWater") return own.stopWaterNightC === null ? "no" : AS_KIND;
  const value = own[name];
  return value === undefined ? AS_KIND : value === true ? "yes" : value === false ? "no" : value;
}

/** Figures that contradict each other once the grower's own stand beside those of the kind. */
export function ownProblems(own: Partial<GroupValues>, ofKind: GroupValues): Problem[] {
  const all = { ...ofKind, ...own };
  const wrong: [boolean, string, keyof GroupValues][] = [
    [all.killC >= all.damageC, "death-before-damage", "killC"],
    [
      all.stopWaterNightC !== null && all.stopWaterNightC >= all.cutWaterNightC,
      "stop-before-cut",
      "stopWaterNightC",
    ],
    [all.restRefillFrac > all.refillFrac, "rest-wetter-than-growth", "restRefillFrac"],
  ];
  return wrong.flatMap(([is, code, name]) => (is ? [{ code, path: [`own.${name}`] }] : []));
}

function inOwnUnit(shown: number, one: number): number {
  return Number((shown * one).toPrecision(12));
}

/** A figure in the unit of its field. */
export function inShownUnit(value: number, one: number): number {
  return Number((value / one).toPrecision(12));
}
