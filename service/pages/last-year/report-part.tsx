import { brierOf } from "../../../core/replay/score/reliability.ts";
import type { PolicySummary } from "../../../core/replay/score/summary.ts";
import type { DeskAsk } from "../../replay/replay-desk.ts";
import type { ReplayReport } from "../../replay/replay-report.ts";
import type { PageContext } from "../page-context.ts";
import { placeName } from "./place-name.ts";

type Words = PageContext["words"];

/** The outcome of a replay in words and one table: each way of looking after the pots, and where the plan did worse. */
export function ReportPart({ words, ask, report }: { words: Words; ask: DeskAsk; report: ReplayReport }) {
  const { say } = words;
  return (
    <section aria-labelledby="outcome">
      <h2 id="outcome">
        {say("last-year.outcome", { place: placeName(words, ask.placeId), yearText: String(ask.year) })}
      </h2>
      <p>{say(`last-year.forecasts.${report.forecasts}`)}</p>
      <p>{say("last-year.unit")}</p>
      <WaysTable words={words} report={report} />
      <WorsePart words={words} report={report} />
      <BeliefPart words={words} report={report} />
      {report.credits.map((credit) => (
        <p class="credit">{credit}</p>
      ))}
    </section>
  );
}

function WaysTable({ words, report }: { words: Words; report: ReplayReport }) {
  const { say } = words;
  const best: Row[] =
    report.boundCost === null
      ? []
      : [
          [
            say("last-year.best"),
            hundred(report.boundCost),
            hundred(report.best?.damage ?? 0),
            "",
            "",
            "",
            "",
          ],
        ];
  const rows: Row[] = [
    ...[...report.policies].sort((a, b) => a.cost.mean - b.cost.mean).map((way) => rowOf(words, way)),
    ...best,
  ];
  const heads = ["way", "cost", "damage", "cans", "litres", "carries", "mornings"] as const;
  return (
    <section class="wide" tabindex={0} aria-labelledby="outcome">
      <table>
        <thead>
          <tr>
            {heads.map((head) => (
              <th scope="col">{say(`last-year.head.${head}`)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, ...cells]) => (
            <tr>
              <th scope="row">{name}</th>
              {cells.map((cell) => (
                <td>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

type Row = readonly string[];

function rowOf(words: Words, way: PolicySummary): Row {
  return [
    words.trySay(`last-year.way.${way.id}`) ?? way.id,
    hundred(way.cost.mean),
    hundred(way.damage),
    String(Math.round(way.pours)),
    String(Math.round(way.litres)),
    String(Math.round(way.carries)),
    String(Math.round(way.morningsWithWork)),
  ];
}

/** Groups of pots for which some other way did better, by how much and by what. */
function WorsePart({ words, report }: { words: Words; report: ReplayReport }) {
  const worse = report.comparisons.filter(({ difference }) => difference.mean > WORTH_TELLING);
  if (worse.length === 0) return <p>{words.say("last-year.never-worse")}</p>;
  return (
    <>
      <p>{words.say("last-year.worse")}</p>
      <ul>
        {worse.map(({ groupId, bestId, difference, most }) => (
          <li>
            {words.say("last-year.worse-at", {
              group: words.trySay(`group.${groupId}`) ?? groupId,
              way: words.trySay(`last-year.way.${bestId}`) ?? bestId,
              more: hundred(difference.mean),
              term: words.say(`last-year.term.${most.term}`),
            })}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Less than this, in plants, is not worth a line. */
const WORTH_TELLING = 0.01;

function BeliefPart({ words, report: { belief } }: { words: Words; report: ReplayReport }) {
  if (belief === null) return null;
  const told = belief.byMonth.filter(({ count }) => count > 0);
  const within = told.reduce((sum, { withinFrac, count }) => sum + withinFrac * count, 0);
  const count = told.reduce((sum, month) => sum + month.count, 0);
  const refill = brierOf(belief.refill);
  if (count === 0 || refill === null) return null;
  return (
    <p>
      {words.say("last-year.belief", {
        withinCount: Math.round((100 * within) / count),
        score: refill.score.toFixed(3),
        climateScore: refill.ofClimate.toFixed(3),
      })}
    </p>
  );
}

function hundred(value: number): string {
  return value.toFixed(2);
}
