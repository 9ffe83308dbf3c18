import type { Component } from "../../../core/mix/component.ts";
import type { Mix } from "../../../core/mix/mix.ts";
import { moistureProfile } from "../../../core/pot/profile.ts";
import type { Words } from "../../words/words.ts";
import { PotSection } from "../drawing/pot-section.tsx";
import { componentName } from "../forms/component-name.ts";
import { typedOfMix } from "../forms/mix-fields.tsx";
import type { SiteNow } from "../site-now.ts";
import { benchState } from "./bench-state.ts";

/** Every mix of the house, each in the same vessel, so that the difference is seen. */
export function MixesPage({ now, words }: { now: SiteNow; words: Words }) {
  const { say } = words;
  return (
    <>
      <h1>{say("nav.mixes")}</h1>
      <p class="lead">{say("mixes.lead")}</p>
      <ul class="plain mixes">
        {now.collection.mixes.map((mix) => (
          <MixLine mix={mix} now={now} words={words} />
        ))}
      </ul>
      <p>
        <a class="button quiet" href="/mixes/new">
          {say("mixes.new")}
        </a>
      </p>
      <OwnComponents own={now.collection.ownComponents ?? []} words={words} />
    </>
  );
}

function OwnComponents({ own, words }: { own: readonly Component[]; words: Words }) {
  const { say } = words;
  return (
    <section>
      <h2>{say("own.all")}</h2>
      <p>{say(own.length === 0 ? "own.none" : "own.some")}</p>
      <ul class="plain">
        {own.map(({ id }) => (
          <li>
            <p class="deed-head">
              <a href={`/components/${encodeURIComponent(id)}`}>{componentName(id, { words, own })}</a>
            </p>
          </li>
        ))}
      </ul>
      <p>
        <a class="button quiet" href="/components/new">
          {say("own.door")}
        </a>{" "}
        <a class="button quiet" href="/components">
          {say("library.door")}
        </a>
      </p>
    </section>
  );
}

function MixLine({ mix, now, words }: { mix: Mix; now: SiteNow; words: Words }) {
  const { vessel, inVessel } = benchState(typedOfMix(mix), { now, mix });
  const hold = inVessel?.hold;
  return (
    <li>
      {vessel && inVessel && hold && (
        <PotSection
          vessel={vessel}
          profile={moistureProfile({ retention: inVessel.retention, vessel, waterMl: hold.capacityMl })}
          lineMm={6}
          pxPerCm={Math.min(3, 110 / Math.max(vessel.topCm, vessel.baseCm))}
          label={words.say("bench.section", { wetLayerCm: hold.wetLayerCm, capacityMl: hold.capacityMl })}
        />
      )}
      <div>
        <p class="deed-head">
          <a href={`/mixes/${encodeURIComponent(mix.id)}`}>{mix.name}</a>
        </p>
        {mix.recipe.kind === "parts" && (
          <p>{recipeText(mix, { words, own: now.collection.ownComponents })}</p>
        )}
        {hold && (
          <p>
            {words.say("mixes.line", { capacityFrac: hold.capacityFrac, airSpaceFrac: hold.airSpaceFrac })}
          </p>
        )}
        {mix.test && <p class="hint">{words.say("figure.tested")}</p>}
      </div>
    </li>
  );
}

function recipeText({ recipe }: Mix, by: { words: Words; own: readonly Component[] | undefined }): string {
  if (recipe.kind !== "parts") return "";
  const { words } = by;
  return words.list(
    recipe.parts.map(({ component, parts }) =>
      words.say("mixes.part", { parts, name: componentName(component, by) }),
    ),
  );
}
