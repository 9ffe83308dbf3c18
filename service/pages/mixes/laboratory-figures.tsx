import type { Ranged } from "../../../core/mix/component.ts";
import type { MixFigures } from "../../../core/mix/mix-figures.ts";
import type { Words } from "../../words/words.ts";

const SHARES = [
  "totalPorosityFrac",
  "waterAt10cmFrac",
  "waterAt50cmFrac",
  "waterAt100cmFrac",
  "airAt10cmFrac",
  "easilyAvailableFrac",
  "bufferFrac",
] as const satisfies readonly (keyof MixFigures)[];

const DENSITIES = ["dryDensityKgPerL", "wetDensityKgPerL"] as const satisfies readonly (keyof MixFigures)[];

/** The mix without a vessel, as laboratories state it, each figure with its ends. */
export function LaboratoryFigures({ figures, words }: { figures: MixFigures; words: Words }) {
  const { say } = words;
  return (
    <details class="log">
      <summary>{say("laboratory.title")}</summary>
      <table class="figures">
        <tbody>
          {SHARES.map((name) => (
            <tr>
              <th scope="row">{say(`laboratory.${name}`)}</th>
              <td class="figure">{say("figure.share", { partFrac: figures[name].mid })}</td>
              <td>{shareRange(figures[name], words)}</td>
            </tr>
          ))}
          {DENSITIES.map((name) => (
            <tr>
              <th scope="row">{say(`laboratory.${name}`)}</th>
              <td class="figure">{say("own.density", { midKgPerL: figures[name].mid })}</td>
              <td>{densityRange(figures[name], words)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

function shareRange({ low, high }: Ranged, { say }: Words): string {
  return say("own.share-range", { lowFrac: low, highFrac: high });
}

function densityRange({ low, high }: Ranged, { say }: Words): string {
  return say("own.density-range", { lowKgPerL: low, highKgPerL: high });
}
