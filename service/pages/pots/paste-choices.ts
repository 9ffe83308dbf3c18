import type { Collection } from "../../../core/plan/collection.ts";
import { groupsById } from "../../../core/plant/groups.ts";
import type { Words } from "../../words/words.ts";
import { bare } from "../forms/name-problems.ts";
import { MATERIALS, SHAPES } from "../forms/vessel-fields.tsx";

/** What a column takes: each value by its own word or by the name that the forms show. */
export interface PasteChoices {
  readonly column: "groupId" | "shape" | "material" | "mix" | "spot";
  readonly choices: readonly { readonly value: string; readonly text: string }[];
}

/** The columns of a pasted table that take one of a list. */
export function pasteChoices(collection: Collection, words: Words): PasteChoices[] {
  const { say } = words;
  const named = (list: readonly { id: string; name: string }[]) =>
    list.map(({ id, name }) => ({ value: id, text: name }));
  return [
    {
      column: "groupId",
      choices: [...groupsById(collection.ownGroups).keys()].map((value) => ({
        value,
        text: words.trySay(`group.${value}`) ?? value,
      })),
    },
    { column: "shape", choices: SHAPES.map((value) => ({ value, text: say(`shape.${value}`) })) },
    { column: "material", choices: MATERIALS.map((value) => ({ value, text: say(`material.${value}`) })) },
    { column: "mix", choices: named(collection.mixes) },
    { column: "spot", choices: named(collection.spots) },
  ];
}

/** A row with what stands there by name put as its value; what is no such name is left as it is. */
export function chosenByName<Row extends Readonly<Record<string, string | undefined>>>(
  row: Row,
  choices: readonly PasteChoices[],
): Row {
  const chosen = choices.flatMap(({ column, choices: known }) => {
    const called = bare(row[column] ?? "");
    const found = known.find(({ text }) => bare(text) === called);
    return found ? [[column, found.value]] : [];
  });
  return { ...row, ...Object.fromEntries(chosen) };
}
