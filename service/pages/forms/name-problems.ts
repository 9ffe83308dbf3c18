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

/** A text as it counts when two are compared: composed, small, every gap a single space, those that do not break as well. */
export function bare(text: string): string {
  return text.normalize("NFC").replaceAll(/\s+/g, " ").trim().toLowerCase();
}
