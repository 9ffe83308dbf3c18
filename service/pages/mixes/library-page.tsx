import type { Component } from "../../../core/mix/component.ts";
import { COMPONENTS } from "../../../core/mix/library.ts";
import { SOURCES, type SourceKey } from "../../../core/sources.ts";
import type { Words } from "../../words/words.ts";
import { componentName } from "../forms/component-name.ts";

/** What every listed component is, holds and weighs, and on what those figures rest. */
export function LibraryPage({ words }: { words: Words }) {
  const { say } = words;
  return (
    <>
      <h1>{say("library.title")}</h1>
      <p class="lead">{say("library.lead")}</p>
      <p class="deed-note">{say("mix.dust")}</p>
      <ul class="plain">
        {COMPONENTS.map((component) => (
          <li id={component.id}>
            <p class="deed-head">{componentName(component.id, { words })}</p>
            <p>{words.trySay(`component-text.${component.id}`)}</p>
            <p>{figuresText(component, words)}</p>
            <p class="hint">{standingText(component, words)}</p>
          </li>
        ))}
      </ul>
    </>
  );
}

function figuresText(component: Component, { say }: Words): string {
  const { dryDensityKgPerL, totalPorosityFrac } = component;
  const cup = component.cupCapacityFrac ?? component.waterAt10cmFrac;
  return say("library.figures", {
    lowKgPerL: dryDensityKgPerL.low,
    highKgPerL: dryDensityKgPerL.high,
    poresFrac: totalPorosityFrac.mid,
    cupFrac: cup.mid,
    lowCupFrac: cup.low,
    highCupFrac: cup.high,
  });
}

/** How well the figures are known, and the works behind them. */
function standingText({ status, sources }: Component, words: Words): string {
  const standing = words.say(`library.${status}`);
  if (sources.length === 0) return standing;
  const works = sources.map((key) => {
    const { authors, year } = SOURCES[key as SourceKey];
    return words.say("standing.source", { authors: authors.split(/[;,]/)[0] ?? authors, year: String(year) });
  });
  return `${standing} ${works.join(" ")}`;
}
