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

/** A hand-over as typed; its days may not be over, and its person must be known. */
export function handoverOfForm(
  typed: Typed,
  { id, today, personIds }: { id: string; today: string; personIds: readonly string[] },
): FormRead<Handover> {
  const read = readForm(HandoverForm, typed);
  if (!read.ok) return read;
  const { "handover-person": personId, fromDay, toDay } = read.value;
  const problems: Problem[] = [
    ...(personIds.includes(personId) ? [] : [{ code: "not-chosen", path: ["handover-person"] }]),
    ...(toDay < fromDay ? [{ code: "last-day-before-first", path: ["toDay"] }] : []),
    ...(toDay < today ? [{ code: "day-gone-by", path: ["toDay"] }] : []),
  ];
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { id, personId, fromDay, toDay, alone: typed.alone === "yes" } };
}
