import type { MixInVessel } from "../../../core/mix/mix-in-vessel.ts";
import type { Words } from "../../words/words.ts";

/** What the filled vessel holds and weighs, each figure with how far it may be off. */
export function MixFacts({ inVessel, words }: { inVessel: MixInVessel; words: Words }) {
  const { hold, ranges, shrinkFrac, libraryOnly } = inVessel;
  const { low, high } = ranges.capacityFactor;
  const { say } = words;
  return (
    <>
      <table class="figures">
        <tbody>
          <Row
            name={say("figure.capacity")}
            value={say("figure.ml", { midMl: hold.capacityMl })}
            range={say("figure.held-range", {
              lowMl: hold.capacityMl * low,
              highMl: hold.capacityMl * high,
              shareOfFrac: hold.capacityFrac,
            })}
          />
          <Row
            name={say("figure.usable")}
            value={say("figure.ml", { midMl: hold.usableMl })}
            range={say("figure.of-held", { shareOfFrac: hold.usableMl / hold.capacityMl })}
          />
          <Row
            name={say("figure.air")}
            value={say("figure.share", { partFrac: hold.airSpaceFrac })}
            range={say("figure.pores", { poresFrac: hold.totalPorosityFrac })}
          />
          <Row
            name={say("figure.mass")}
            value={say("figure.kg", { midKg: hold.drainedMassKg })}
            range={say("figure.kg-range", { lowKg: hold.dryMassKg, highKg: hold.soakedMassKg })}
          />
          <Row
            name={say("figure.volume")}
            value={say("figure.ml", { midMl: hold.volumeMl })}
            range={say("figure.shrink", { shrinkFrac })}
          />
        </tbody>
      </table>
      <p class="hint">{say(libraryOnly ? "figure.library" : "figure.tested")}</p>
    </>
  );
}

function Row({ name, value, range }: { name: string; value: string; range: string }) {
  return (
    <tr>
      <th scope="row">{name}</th>
      <td class="figure">{value}</td>
      <td>{range}</td>
    </tr>
  );
}
