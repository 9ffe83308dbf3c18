import { z } from "zod";
import type { Problem } from "../../../core/problem.ts";
import type { Handover } from "../../store/handover.ts";
import { type FormRead, readForm, type Typed } from "../forms/form-problems.ts";
import { neededDay, neededText } from "../forms/typed-fields.ts";

const HandoverForm = z.object({
  "handover-person": neededText(),
  fromDay: neededDay(),
  toDay: neededDay(),
});

export interface HandoverBeside {
  readonly today: string;
  readonly personIds: readonly string[];
}

/** Its days may not be over, and its person must be known. */
export function handoverProblems(
  { personId, fromDay, toDay }: Omit<Handover, "id" | "alone">,
  { today, personIds }: HandoverBeside,
): Problem[] {
  return [
    ...(personIds.includes(personId) ? [] : [{ code: "not-chosen", path: ["personId"] }]),
    ...(toDay < fromDay ? [{ code: "last-day-before-first", path: ["toDay"] }] : []),
    ...(toDay < today ? [{ code: "day-gone-by", path: ["toDay"] }] : []),
  ];
}

/** A hand-over as typed. */
export function handoverOfForm(
  typed: Typed,
  { id, ...beside }: HandoverBeside & { readonly id: string },
): FormRead<Handover> {
  const read = readForm(HandoverForm, typed);
  if (!read.ok) return read;
  const { "handover-person": personId, fromDay, toDay } = read.value;
  const problems = handoverProblems({ personId, fromDay, toDay }, beside).map((problem) =>
    problem.path[0] === "personId" ? { ...problem, path: ["handover-person"] } : problem,
  );
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { id, personId, fromDay, toDay, alone: typed.alone === "yes" } };
}
