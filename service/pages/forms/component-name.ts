import type { Component } from "../../../core/mix/component.ts";
import type { Words } from "../../words/words.ts";

interface Naming {
  readonly words: Words;
  readonly own?: readonly Component[] | undefined;
}

/** What a component is called: by the grower where it is an own one, else by the catalogue. */
export function componentName(id: string, { words, own = [] }: Naming): string {
  return own.find((component) => component.id === id)?.name ?? words.trySay(`component.${id}`) ?? id;
}

/** The name within a sentence: the catalogue's begin small, the grower's stay as they were written. */
export function nameAmid(id: string, naming: Naming): string {
  const name = componentName(id, naming);
  const isOwn = naming.own?.some((component) => component.id === id) ?? false;
  return isOwn ? name : name.charAt(0).toLocaleLowerCase(naming.words.locale) + name.slice(1);
}
