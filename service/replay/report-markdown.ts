import { POLICIES } from "../../core/replay/policy-list.ts";
import type { Estimate } from "../../core/replay/score/estimate.ts";
import { brierOf, type Reliability } from "../../core/replay/score/reliability.ts";
import { HARM_TERMS } from "../../core/replay/world/harm-terms.ts";
import type { ReplayReport } from "./replay-report.ts";

/** The report as Markdown: tables with intervals and a sentence before each. */
export function reportMarkdown(report: ReplayReport): string {
  return [
    "# Replay",
    "",
    ...headOf(report),
    ...policyTable(report),
    ...termTable(report),
    ...comparisonTable(report),
    ...ablationTable(report),
    ...learningTable(report),
    ...beliefTables(report),
    ...report.credits,
    "",
  ].join("\n");
}

function headOf({ ask, boundCost, seasons, forecasts }: ReplayReport): string[] {
  const seeds =
    ask.seedCount === 1
      ? `seed ${ask.firstSeed}`
      : `seeds ${ask.firstSeed} to ${ask.firstSeed + ask.seedCount - 1}`;
  const { placeIds, years, groupIds } = ask;
  return [
    `Places ${placeIds.join(", ")}; years ${years.join(", ")}; ${seeds}; groups ${groupIds.join(", ")}. ` +
      `Played: ${seasons} of ${placeIds.length * years.length * ask.seedCount} seasons. ` +
      (forecasts === "drawn"
        ? "Forecasts are drawn with published errors."
        : "Forecasts are those that the feed had truly sent; it keeps no ensembles of them."),
    "",
    "Harm and trouble are in plants: 1 is a plant as good as lost. A plant that is lost counts once; another takes its " +
      "place and is looked after in the same way. Harm is what the pot truly suffered, by the " +
      "planner's own terms; trouble is cans, carries and days away from its place at the planner's own prices. Damage is " +
      "harm without gloom, which wears every plant that winters indoors. The best possible has everything foreseen: " +
      "its harm nobody could have spared the plants. " +
      "After each mean stands half of its interval of 95 %, in which a seed counts once.",
    ...(boundCost === null
      ? []
      : ["", `The best that could have been done, with everything foreseen, costs ${three(boundCost)}.`]),
    "",
  ];
}

function policyTable({ policies, best, boundCost }: ReplayReport): string[] {
  const head = [
    "way of looking after pots",
    "harm + trouble",
    "over best",
    "x best",
    "harm",
    "harm over best",
    "damage",
    "trouble",
    "lost",
    "cans",
    "litres",
    "carries",
    "kg carried",
    "mornings with work",
  ];
  const blank = (count: number) => new Array<string>(count).fill("");
  const last =
    best === null
      ? []
      : [
          "best possible",
          three(boundCost!),
          ...blank(2),
          three(best.harm),
          "",
          three(best.damage),
          three(best.trouble),
          ...blank(6),
        ];
  const rows = policies.map((one) => [
    one.id,
    withWidth(one.cost),
    one.regret === null ? "" : withWidth(one.regret),
    one.overBound === null ? "" : one.overBound.toFixed(2),
    three(one.harm),
    one.harmOverBest === null ? "" : withWidth(one.harmOverBest),
    three(one.damage),
    three(one.trouble),
    `${(100 * one.lostFrac).toFixed(0)} %`,
    one.pours.toFixed(0),
    one.litres.toFixed(0),
    one.carries.toFixed(1),
    one.carriedKg.toFixed(0),
    one.morningsWithWork.toFixed(0),
  ]);
  return table(head, best === null ? rows : [...rows, last]).concat(
    policies.map(({ id }) => `- ${id}: ${POLICIES.find((policy) => policy.id === id)?.about ?? ""}`),
    "",
  );
}

function termTable({ policies, best }: ReplayReport): string[] {
  const named = [...policies, ...(best === null ? [] : [{ id: "best possible", ...best }])];
  const rows = named.map(({ id, harmByTerm }) => [id, ...harmByTerm.map(three)]);
  return ["## Harm by term", "", ...table(["", ...HARM_TERMS], rows)];
}

function comparisonTable({ comparisons }: ReplayReport): string[] {
  if (comparisons.length === 0) return [];
  const losing = comparisons.filter(({ difference }) => difference.mean > (difference.halfWidth || 0));
  return [
    "## The planner against the best way of people, by place and group",
    "",
    `The planner is worse by more than the interval in ${losing.length} of ${comparisons.length}.`,
    "",
    ...table(
      [
        "place",
        "group",
        "planner",
        "best way of people",
        "",
        "planner less best",
        "mostly by",
        "best possible",
      ],
      comparisons.map((one) => [
        one.placeId,
        one.groupId,
        three(one.planner),
        one.bestId,
        three(one.best),
        withWidth(one.difference),
        `${one.most.term} ${one.most.more > 0 ? "+" : ""}${three(one.most.more)}`,
        one.bound === null ? "" : three(one.bound),
      ]),
    ),
  ];
}

function ablationTable({ ablations }: ReplayReport): string[] {
  if (ablations.length === 0) return [];
  return [
    "## What each part is worth",
    "",
    "Harm and trouble beyond the planner's when the part is left out; below zero the part does harm.",
    "",
    ...table(
      ["left out", "costs"],
      ablations.map(({ id, costs }) => [id, withWidth(costs)]),
    ),
  ];
}

function learningTable({ learningByHalfMonth }: ReplayReport): string[] {
  if (learningByHalfMonth === null) return [];
  const months = Array.from(
    { length: 12 },
    (_, m) => learningByHalfMonth[2 * m]! + learningByHalfMonth[2 * m + 1]!,
  );
  return ["## What learning saves, by month", "", ...table(MONTHS, [months.map(three)])];
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

function beliefTables({ belief }: ReplayReport): string[] {
  if (belief === null) return [];
  return [
    "## What the planner believed",
    "",
    "Content of the pots, by month: mean error as a share of capacity, and how often the truth lay in the band of 80 %.",
    "",
    ...table(
      ["", ...MONTHS],
      [
        ["error", ...belief.byMonth.map(({ error }) => two(error))],
        ["within", ...belief.byMonth.map(({ withinFrac }) => two(withinFrac))],
      ],
    ),
    ...reliabilityTable("At its refill point by tonight if nothing is done", belief.refill),
    ...reliabilityTable("1 mm of rain or more before midnight", belief.rain),
  ];
}

function reliabilityTable(what: string, of: Reliability): string[] {
  const brier = brierOf(of);
  if (brier === null) return [];
  const bins = of.counts.flatMap((count, bin) => (count > 0 ? [{ count, bin }] : []));
  return [
    `${what}: share told, how often it came true, and in how many cases. Brier score ${three(brier.score)}, ` +
      `always telling the overall frequency ${three(brier.ofClimate)}.`,
    "",
    ...table(
      ["told", ...bins.map(({ count, bin }) => two(of.toldSums[bin]! / count))],
      [
        ["came true", ...bins.map(({ count, bin }) => two(of.cameTrue[bin]! / count))],
        ["cases", ...bins.map(({ count }) => String(count))],
      ],
    ),
  ];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [line(head), line(head.map((_, i) => (i === 0 ? "---" : "---:"))), ...rows.map(line), ""];
}

function withWidth({ mean, halfWidth }: Estimate): string {
  return Number.isNaN(halfWidth) ? three(mean) : `${three(mean)} ± ${three(halfWidth)}`;
}

function three(value: number): string {
  return (value + 0).toFixed(3).replace(/^-0\.000$/, "0.000");
}

function two(value: number): string {
  return value.toFixed(2);
}
