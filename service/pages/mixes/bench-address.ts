import type { PartChange } from "../../../core/mix/finding.ts";
import type { Typed } from "../forms/form-problems.ts";

/** Fields that belong to a form's sending, not to what lies on the bench. */
const NOT_ON_BENCH = new Set(["formId", "start"]);

/** The bench as an address, so that it can be gone back to, bookmarked and compared. */
export function benchAddress(path: string, typed: Typed): string {
  const fields = Object.entries(typed).filter(([name, value]) => value !== "" && !NOT_ON_BENCH.has(name));
  return `${path}?${new URLSearchParams(fields).toString()}`;
}

/** The bench after one change of parts. */
export function typedAfter(typed: Typed, { component, toParts }: PartChange): Typed {
  return { ...typed, [`part.${component}`]: toParts === 0 ? "" : String(toParts) };
}
