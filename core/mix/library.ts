import type { Component } from "./component.ts";
import { MINERALS } from "./library-minerals.ts";
import { ORGANICS } from "./library-organics.ts";

/** Every component that comes with Leebench. */
export const COMPONENTS: readonly Component[] = [...ORGANICS, ...MINERALS];

/** The library by id; a grower's own component of the same id stands in place of the library's. */
export function componentsById(own: readonly Component[] = []): ReadonlyMap<string, Component> {
  return new Map([...COMPONENTS, ...own].map((component) => [component.id, component]));
}
