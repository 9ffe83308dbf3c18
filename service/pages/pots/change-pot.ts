import { z } from "zod";
import type { RootWork } from "../../../core/journal/entry.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import { groupsById } from "../../../core/plant/groups.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { Problem } from "../../../core/problem.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { maybeNumber, neededNumber, neededText } from "../forms/typed-fields.ts";
import { OWN_SHAPE, ownOf, ownProblems, typedOfOwn } from "./own-values.ts";
import { ROOT_WORKS } from "./root-works.ts";

const ChangeForm = z.object({
  name: neededText(),
  groupId: neededText(100),
  count: neededNumber({ from: 1, to: 10_000, whole: true }),
  canopyWidthCm: neededNumber({ from: 1, to: 1000 }),
  plantHeightCm: neededNumber({ from: 1, to: 2000 }),
  ...Object.fromEntries(ROOT_WORKS.map((work) => [`dry.${work}`, maybeNumber({ from: 0, to: 365 })])),
  ...OWN_SHAPE,
});

type ChangeRead = { ok: true; value: Pot } | { ok: false; problems: readonly Problem[] };

/** The pot as it was, with what the form says of it; where it first stood is left as it was. */
export function changedPot(typed: Typed, of: { before: Pot; collection: Collection }): ChangeRead {
  const read = readForm(ChangeForm, typed);
  if (!read.ok) return read;
  const { name, groupId, count, canopyWidthCm, plantHeightCm } = read.value;
  const group = groupsById(of.collection.ownGroups).get(groupId);
  if (group === undefined) return { ok: false, problems: [{ code: "not-chosen", path: ["groupId"] }] };
  const own = ownOf(read.value);
  const problems = ownProblems(own, group.values);
  if (problems.length > 0) return { ok: false, problems };
  const dryDays = dryDaysOf(read.value);
  const { id, firstSpotId } = of.before;
  return {
    ok: true,
    value: {
      id,
      name,
      groupId,
      count,
      canopyWidthCm,
      plantHeightCm,
      firstSpotId,
      ...(Object.keys(own).length > 0 ? { own } : {}),
      ...(Object.keys(dryDays).length > 0 ? { dryDays } : {}),
    },
  };
}

/** A pot as the text of its fields. */
export function typedOfPot(pot: Pot): Typed {
  const { name, groupId, count = 1, canopyWidthCm, plantHeightCm, own = {}, dryDays = {} } = pot;
  return {
    name,
    groupId,
    count: String(count),
    canopyWidthCm: String(canopyWidthCm),
    plantHeightCm: String(plantHeightCm),
    ...Object.fromEntries(Object.entries(dryDays).map(([work, days]) => [`dry.${work}`, String(days)])),
    ...typedOfOwn(own),
  };
}

function dryDaysOf(value: Readonly<Record<string, unknown>>): Partial<Record<RootWork, number>> {
  return Object.fromEntries(
    ROOT_WORKS.flatMap((work) => {
      const days = value[`dry.${work}`];
      return typeof days === "number" ? [[work, days]] : [];
    }),
  );
}
