import { z } from "zod";
import { type Component, TOLD_FIGURES, type ToldFigure } from "../../../core/mix/component.ts";
import { type ComponentDraft, ownComponent } from "../../../core/mix/own-component.ts";
import type { Problem } from "../../../core/problem.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { choice, maybeNumber, neededText } from "../forms/typed-fields.ts";

export const GRAINS = ["fine", "medium", "coarse"] as const;
export const ROLES = ["draining", "holding"] as const;
export const PREPARATIONS = ["soak", "rinse", "sieve", "damp-down", "let-mature"] as const;
export const NUTRIENTS = ["none", "low", "rich", "locks-nitrogen"] as const;
export const CAUTIONS = ["dust", "silica-dust", "mould-and-bacteria", "none"] as const;

/** The figures as fields of the form: shares are typed in percent. */
export const FIGURE_FIELDS = {
  dryDensityKgPerL: "litreKg",
  totalPorosityFrac: "poresPercent",
  cupCapacityFrac: "cupPercent",
  waterAt10cmFrac: "water10Percent",
  waterAt50cmFrac: "water50Percent",
  waterAt100cmFrac: "water100Percent",
} as const satisfies Readonly<Record<ToldFigure, string>>;

const percent = () => maybeNumber({ from: 0, to: 100 });

const ComponentForm = z.object({
  name: neededText(),
  role: choice(ROLES),
  grain: choice(GRAINS),
  grainMm: maybeNumber({ from: 0.01, to: 200 }),
  compost: choice(["yes", "no"]),
  litreKg: maybeNumber({ from: 0, to: 3 }),
  poresPercent: percent(),
  cupPercent: percent(),
  water10Percent: percent(),
  water50Percent: percent(),
  water100Percent: percent(),
  nutrients: choice(NUTRIENTS),
  caution: choice(CAUTIONS),
});

type ComponentRead = { ok: true; value: Component } | { ok: false; problems: readonly Problem[] };

/** The component as described, or everything that is still to be told; problems carry the fields of the form. */
export function componentOfForm(typed: Typed, id: string): ComponentRead {
  const read = readForm(ComponentForm, typed);
  if (!read.ok) return read;
  const { name, role, grain, grainMm, compost, nutrients, caution } = read.value;
  const prepare = PREPARATIONS.filter((code) => typed[`prepare.${code}`] === "yes");
  const figures = figuresOf(read.value);
  const problems = lonelyWaters(figures);
  if (problems.length > 0) return { ok: false, problems };
  const draft: ComponentDraft = {
    id,
    name,
    role,
    grain,
    compost: compost === "yes",
    nutrients,
    caution,
    prepare,
  };
  const outcome = ownComponent({ ...draft, ...(grainMm === undefined ? {} : { grainMm }), ...figures });
  if (outcome.ok) return { ok: true, value: outcome.value.component };
  return { ok: false, problems: outcome.problems.map(atField) };
}

/** Id of a new component: its name in plain letters, so that a case file stays readable. */
export function componentIdOf(name: string, formId: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 60)
    .replace(/-$/, "");
  return plain === ""
    ? `own-${formId
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, "")
        .slice(0, 12)}`
    : plain;
}

/** A component as the text of its fields; only what the grower told is filled in. */
export function typedOfComponent(component: Component): Record<string, string> {
  const told = component.told ?? TOLD_FIGURES;
  const figures = told.flatMap((figure) => {
    const mid = component[figure]?.mid;
    const shown = figure === "dryDensityKgPerL" ? mid : mid === undefined ? undefined : mid * 100;
    return shown === undefined ? [] : [[FIGURE_FIELDS[figure], String(Number(shown.toPrecision(4)))]];
  });
  return {
    name: component.name ?? component.id,
    role: component.role,
    grain: component.grain,
    ...(component.grainMm === undefined ? {} : { grainMm: String(component.grainMm) }),
    compost: component.compost ? "yes" : "no",
    nutrients: component.nutrients,
    caution: component.caution,
    ...Object.fromEntries(component.prepare.map((code) => [`prepare.${code}`, "yes"])),
    ...Object.fromEntries(figures),
  };
}

type Figures = Partial<Record<ToldFigure, number>>;

function figuresOf(read: z.output<typeof ComponentForm>): Figures {
  return Object.fromEntries(
    TOLD_FIGURES.flatMap((figure) => {
      const typed = read[FIGURE_FIELDS[figure]];
      if (typed === undefined) return [];
      return [[figure, figure === "dryDensityKgPerL" ? typed : typed / 100]];
    }),
  );
}

const WATERS = ["waterAt10cmFrac", "waterAt50cmFrac", "waterAt100cmFrac"] as const;

/** One or two suctions make no curve: they would be left unused without a word. */
function lonelyWaters(figures: Figures): Problem[] {
  const missing = WATERS.filter((water) => figures[water] === undefined);
  if (missing.length === 0 || missing.length === WATERS.length) return [];
  return missing.map((water) => ({ code: "all-three-waters", path: [FIGURE_FIELDS[water]] }));
}

function atField(problem: Problem): Problem {
  const field = problem.path[0] as keyof typeof FIGURE_FIELDS;
  const code = problem.code === "asked-for" && field === "dryDensityKgPerL" ? "weigh-a-litre" : problem.code;
  return { ...problem, code, path: [FIGURE_FIELDS[field] ?? field] };
}
