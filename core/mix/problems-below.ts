import type { Problem } from "../problem.ts";

/** Problems of a part, told from the top of the whole. */
export function problemsBelow(path: readonly (string | number)[], problems: readonly Problem[]): Problem[] {
  return problems.map((problem) => ({ ...problem, path: [...path, ...problem.path] }));
}
