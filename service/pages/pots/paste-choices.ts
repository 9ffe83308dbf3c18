import type { Collection } from "../../../core/plan/collection.ts";
import { groupsById } from "../../../core/plant/groups.ts";
import type { Words } from "../../words/words.ts";
import { MATERIALS, SHAPES } from "../forms/vessel-fields.tsx";

/** What a column takes: each value by its own word or by the name that the forms show. */
export interface PasteChoices {
  readonly column: "groupId" | "shape" | "material";
  readonly choices: readonly { readonly value: string; readonly text: string }[];
}

/** The columns of a pasted table that take one of a list. */
export function pasteChoices(collection: Collection, words: Words): PasteChoices[] {
  const { say } = words;
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
  ];
}

/** A row with what stands there by name put as its value. */
export function chosenByName(
  row: Readonly<Record<string, string>>,
  choices: readonly PasteChoices[],
): Record<string, string> {
  const chosen = ({ column, choices: known }: PasteChoices) => {
    const called = row[column]?.toLowerCase();
    return known.find(({ text }) => text.toLowerCase() === called)?.value ?? row[column] ?? "";
  };
  return { ...row, ...Object.fromEntries(choices.map((of) => [of.column, chosen(of)])) };
}
