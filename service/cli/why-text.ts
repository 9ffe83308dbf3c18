import type { Collection } from "../../core/plan/collection.ts";
import type { Deed, Reason } from "../../core/plan/deed.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Why, WhyCandidate } from "../../core/plan/why-pot.ts";
import { deedLine } from "../brief/deed-line.ts";
import { namingFor } from "../brief/naming.ts";
import { reasonLine } from "../brief/reason-line.ts";
import type { Words } from "../words/words.ts";
import { daysHead, harmRows, thousandths } from "./why-table.ts";

interface WhyInput {
  readonly why: Why;
  readonly plan: Plan;
  readonly collection: Collection;
  readonly words: Words;
  /** Also the days of ways that were not near to being chosen. */
  readonly all: boolean;
}

/** One pot's deeds as the brief says them, then the numbers behind, harm in thousandths of a plant. */
export function whyText(input: WhyInput): string {
  const { why } = input;
  const { spotId, outlook } = why.row;
  const spot = (id: string) => input.collection.spots.find((one) => one.id === id)?.name ?? id;
  return [
    `${namingFor(input).potName(why.potId)}, at ${spot(spotId)}; its own place: ${spot(why.homeSpotId)}`,
    ...deedsOf(why).flatMap((deed) => deedText(deed, input)),
    "",
    `Holds ${Math.round(outlook.capacityMl)} ml drained; now ${percent(outlook.nowFrac.mid)} of it ` +
      `(${percent(outlook.nowFrac.low)} to ${percent(outlook.nowFrac.high)}); waits for water at ${percent(outlook.refillFrac)}`,
    "",
    ...titled("Harm if nothing is done", harmRows(why.harmIfLeft, why.days)),
    "",
    ...waterText(why),
    "",
    "Ways of spending the days, cost = harm + trouble (> chosen, + chosen if there were room for all)",
    ...ways(why, input.all).flatMap((way) => wayText(way, { why, spot })),
    "",
  ].join("\n");
}

const deedsOf = (why: Why): Deed[] => [why.row, ...why.row.then];

function deedText(deed: Deed, input: WhyInput): string[] {
  const naming = namingFor(input);
  const coded = ({ code, numbers }: Reason) =>
    [code, ...Object.entries(numbers).map(([name, value]) => `${name} ${value}`)].join(", ");
  const line = deed.action === "none" ? null : deedLine({ potPlan: input.why.row, deed, naming });
  return [
    ...(line ? [`  ${line.sentence}`] : []),
    `    ${reasonLine(deed.reason, naming)}`,
    `    ${coded(deed.reason)}; harm avoided ${thousandths(deed.harmAvoided)}, ` +
      `sure ${percent(deed.confidence.shareFrac)}`,
    ...(deed.notCarried
      ? [`    ${reasonLine(deed.notCarried, naming)}`, `    not carried: ${coded(deed.notCarried)}`]
      : []),
  ];
}

function waterText({ water, days }: Why): string[] {
  const { deed, dueShareFrac, rainReliefFrac, thirstSaved, harmDone, costByMorning } = water;
  const done = Object.entries(harmDone).map(([term, harm]) => `${term} ${thousandths(harm)}`);
  const table = [
    daysHead([...days, "never"].slice(0, costByMorning.length), ""),
    ["cost", ...costByMorning.map(thousandths)],
  ];
  return [
    `Water today: ${deed}`,
    `      reaches its refill point before tomorrow in ${percent(dueShareFrac)} of the courses`,
    `      rain brings ${percent(rainReliefFrac)} of what is missing`,
    `      thirst saved ${thousandths(thirstSaved)}; harm of the water itself: ${done.join(", ")}`,
    ...titled("Cost of the next water by the morning on which it is given", table),
  ];
}

/** The chosen and the wished, staying, and the cheapest to each other spot; all of them when asked. */
function ways({ candidates }: Why, all: boolean): WhyCandidate[] {
  const byCost = [...candidates].sort((a, b) => a.cost - b.cost);
  if (all) return byCost;
  const firstTo = (way: WhyCandidate) => byCost.findIndex((one) => goal(one) === goal(way));
  return byCost.filter((way, i) => way.chosen || way.wished || firstTo(way) === i);
}

/** Where a way leads; staying is one way, whatever place it was set against. */
const goal = ({ otherSpotId, away }: WhyCandidate) => (away.includes(true) ? otherSpotId : "stays");

function wayText(way: WhyCandidate, { why, spot }: { why: Why; spot(id: string): string }): string[] {
  const mark = way.chosen ? ">" : way.wished ? "+" : " ";
  const away = why.days.filter((_, d) => way.away[d]).map((day) => day.slice(8));
  const where =
    way.otherSpotId === null || away.length === 0 ? "stays" : `${spot(way.otherSpotId)} on ${away.join(" ")}`;
  const sums = [
    `harm ${thousandths(way.harm)}`,
    `trouble ${thousandths(way.trouble)}`,
    `cost ${thousandths(way.cost)}`,
  ];
  const either =
    way.harmEitherWay === 0 ? [] : [`      whichever days are chosen: ${thousandths(way.harmEitherWay)}`];
  const trips = Math.round(way.trips * 10) / 10;
  return titled(
    `${mark} ${where}: ${sums.join(", ")}; carries ${way.carries}, trips ${trips}`,
    harmRows(way.harmByTerm, why.days),
  ).concat(either);
}

function titled(title: string, rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]?.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0))) ?? [];
  const cells = (row: readonly string[]) =>
    row.map((cell, column) =>
      column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
    );
  return [title, ...rows.map((row) => `      ${cells(row).join("  ").trimEnd()}`)];
}

function percent(shareFrac: number): string {
  return `${Math.round(shareFrac * 100)} %`;
}
