import type { Problem } from "../../../core/problem.ts";

interface Named {
  readonly id: string;
  readonly name: string;
}

/** Told where another of the same list goes by the name, however it is spaced or capitalised. */
export function nameProblems({ id, name }: Named, known: readonly Named[], code: string): Problem[] {
  const taken = known.some((other) => other.id !== id && bare(other.name) === bare(name));
  return taken ? [{ code, path: ["name"] }] : [];
}

/** A name as it counts when two are compared. */
export function bare(name: string): string {
  return name.normalize("NFC").replaceAll(/\s+/g, " ").trim().toLowerCase();
}
