import type { Component } from "../../../core/mix/component.ts";
import type { Words } from "../../words/words.ts";

/** What a component is called: by the grower where it is an own one, else by the catalogue. */
export function componentName(
  id: string,
  { words, own = [] }: { words: Words; own?: readonly Component[] | undefined },
): string {
  return own.find((component) => component.id === id)?.name ?? words.trySay(`component.${id}`) ?? id;
}
