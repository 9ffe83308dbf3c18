import type { Portion } from "./blend.ts";
import type { Component } from "./component.ts";

/** Something to do with a component before or while mixing. Common practice; the catalogue makes the sentence. */
export interface CareNote {
  readonly code: Component["prepare"][number] | Exclude<Component["caution"], "none">;
  readonly components: readonly string[];
  /** Hours that it takes; 0 for what is done while mixing. */
  readonly hours: number;
}

/**
 * In the order of the work: what is sieved is still dry, and is damped after.
 * Common practice: coconut and bark pieces a day in water; rinsed and damped things drain overnight or for an hour.
 */
export const PREPARE_HOURS: Readonly<Record<Component["prepare"][number], number>> = {
  "let-mature": 336,
  soak: 24,
  rinse: 2,
  sieve: 0,
  "damp-down": 1,
};

const CAUTIONS = ["silica-dust", "dust", "mould-and-bacteria"] as const;

/** What to guard against, before the first bag is opened, then the preparation in the order of the work. */
export function careNotes(portions: readonly Portion[]): CareNote[] {
  const components = portions.map(({ component }) => component);
  const tasks = (Object.keys(PREPARE_HOURS) as (keyof typeof PREPARE_HOURS)[]).map((code) => ({
    code,
    components: idsWhere(components, ({ prepare }) => prepare.includes(code)),
    hours: PREPARE_HOURS[code],
  }));
  const cautions = CAUTIONS.map((code) => ({
    code,
    components: idsWhere(components, ({ caution }) => caution === code),
    hours: 0,
  }));
  return [...cautions, ...tasks].filter((note) => note.components.length > 0);
}

function idsWhere(components: readonly Component[], is: (component: Component) => boolean): string[] {
  return components.filter(is).map(({ id }) => id);
}
