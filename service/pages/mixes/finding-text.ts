import type { Component } from "../../../core/mix/component.ts";
import type { Finding, PartChange } from "../../../core/mix/finding.ts";
import { SOURCES } from "../../../core/sources.ts";
import type { Words } from "../../words/words.ts";
import { componentName } from "../forms/component-name.ts";

/** What growers would change, in one sentence with its numbers. */
export function findingText({ code, numbers }: Finding, words: Words): string {
  return words.say(`finding.${code}`, numbers);
}

/** On what a finding rests: a published work, or the practice of the trade. */
export function standingText({ status, source }: Finding, { say }: Words): string {
  if (source === null) return say(`standing.${status}`);
  const { authors, year } = SOURCES[source];
  return say("standing.source", { authors: authors.split(";")[0] ?? authors, year: String(year) });
}

/** The change of parts that would cure it: "Pumice: 4 parts instead of 3". */
export function cureText(
  { component, fromParts, toParts }: PartChange,
  by: { words: Words; own?: readonly Component[] | undefined },
): string {
  const { words } = by;
  const name = componentName(component, by);
  if (toParts === 0) return words.say("cure.without", { name });
  return words.say("cure.change", { name, fromParts, toParts });
}
