import type { Collection } from "../../core/plan/collection.ts";
import type { Deed } from "../../core/plan/deed.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";

import type { Words } from "../words/words.ts";
import type { Brief, BriefDeed, BriefStop, BriefTiming, ComingDay, KeepDryLine } from "./brief-value.ts";
import { careLines } from "./care-lines.ts";
import { cautionLines } from "./caution-lines.ts";
import { deedGroups } from "./deed-groups.ts";
import { deedLine } from "./deed-line.ts";
import { asksForHands, dueDay } from "./due-day.ts";
import { emptyLine } from "./empty-line.ts";
import { groupedBy } from "./grouped-by.ts";
import { groupedDeeds, handledDeeds } from "./grouped-deeds.ts";
import { headline } from "./headline.ts";
import { keptLines } from "./kept-lines.ts";
import { leadLine } from "./lead-line.ts";
import { type Naming, namingFor } from "./naming.ts";
import { eveningLine, potCounts } from "./pot-counts.ts";
import { reasonLine } from "./reason-line.ts";
import { signLines } from "./sign-lines.ts";
import { comingSky, skyLines } from "./sky-lines.ts";
import { spellLine } from "./spell-line.ts";
import { timingLines } from "./timing-lines.ts";
import { trustLines } from "./trust-lines.ts";
import { windowLines } from "./window-lines.ts";
import { workLine } from "./work-line.ts";

interface Planned {
  readonly potPlan: PotPlan;
  readonly deed: Deed;
}

/** The plan in sentences. Every line of every page, mail and terminal comes from here. */
export function briefOf(input: {
  plan: Plan;
  collection: Collection;
  words: Words;
  timing?: BriefTiming | undefined;
}): Brief {
  const { plan, collection, words } = input;
  const naming = namingFor(input);
  const { today, later, dry } = sortDeeds(plan);
  const say = words.say;
  const counts = potCounts(plan, new Set(today.map(({ potPlan }) => potPlan.potId)));
  const stops = stopsInWalkingOrder(today, { collection, naming });
  const title = say("brief.title", { forDay: plan.forDay, site: collection.site.name });
  const timing = timingLines(input.timing, naming);
  const lead = leadLine({ ...counts, deedCount: today.length }, words);
  const work = workLine(today, words);
  const cautions = cautionLines(plan.cautions, naming);
  const signs = plan.pots.flatMap((potPlan) => signLines(potPlan, naming));
  const care = careLines(naming);
  const evening = eveningLine(naming);
  const toldCount = signs.length + care.length + (evening === null ? 0 : 1);
  return {
    language: words.language,
    siteId: plan.siteId,
    forDay: plan.forDay,
    title,
    dayName: words.day(plan.forDay),
    timing,
    lead: work === null ? lead : `${lead} ${work}`,
    headline: headline(stops, { lead, words }),
    emptyLine: emptyLine({ title, lead, timing, stops, cautions, dryCount: dry.length, toldCount }, naming),
    sky: skyLines(
      plan.days.find(({ day }) => day === plan.forDay),
      naming,
    ),
    stops,
    timed: [...today, ...later]
      .map((one) => deedLine({ ...one, naming }))
      .filter(({ dueUtcMs }) => dueUtcMs !== null)
      .sort(byHour),
    keepDry: { heading: say("brief.keep-dry.heading"), lines: dry.map((one) => keepDryLine(one, naming)) },
    signs: { heading: say("brief.signs.heading"), lines: signs },
    care: { heading: say("brief.care.heading"), lines: care },
    evening,
    nothing: { count: counts.restCount, sentence: say("brief.nothing", { restCount: counts.restCount }) },
    spells: (plan.spells ?? []).map((spell) => spellLine(spell, naming)),
    coming: { heading: say("brief.coming.heading"), lines: comingDays(later, naming) },
    windows: { heading: say("brief.windows.heading"), lines: windowLines(naming) },
    cautions: { heading: say("brief.cautions.heading"), lines: cautions },
    trust: {
      heading: say("brief.trust.heading"),
      lines: [...trustLines(plan.weatherAge, naming), ...keptLines(plan.kept, naming)],
      credit: plan.weatherAge.credit,
    },
    changes: { heading: say("brief.changes.heading"), lines: changeLines(naming) },
    demo: plan.weatherAge.source === "demo" ? say("brief.demo") : null,
  };
}

/** What is for today, what has a later day, and what is left dry. */
function sortDeeds(plan: Plan): { today: Planned[]; later: Planned[]; dry: Planned[] } {
  const all = plan.pots.flatMap((potPlan) =>
    [potPlan as Deed, ...potPlan.then].map((deed) => ({ potPlan, deed })),
  );
  const deeds = all.filter(({ deed }) => asksForHands(deed));
  const isLater = ({ deed }: Planned) => dueDay(deed, plan) > plan.forDay;
  return {
    today: deeds.filter((one) => !isLater(one)),
    later: deeds.filter(isLater),
    dry: all.filter(({ deed }) => deed.action === "keep-dry"),
  };
}

function stopsInWalkingOrder(
  today: readonly Planned[],
  { collection, naming }: { collection: Collection; naming: Naming },
): BriefStop[] {
  const order = new Map(collection.spots.map((spot) => [spot.id, spot.walkOrder]));
  const bySpot = groupedBy(today, ({ potPlan }) => potPlan.spotId);
  return [...bySpot]
    .sort(([a], [b]) => (order.get(a) ?? Infinity) - (order.get(b) ?? Infinity) || (a < b ? -1 : 1))
    .map(([spotId, planned]) => {
      const deeds = planned.map((one) => deedLine({ ...one, naming })).sort(byHour);
      return { spotId, name: naming.spotName(spotId), deeds, groups: deedGroups(deeds, naming) };
    });
}

/** Earliest due first; deeds without an hour keep their order at the end. */
function byHour(a: BriefDeed, b: BriefDeed): number {
  return (a.dueUtcMs ?? Number.MAX_SAFE_INTEGER) - (b.dueUtcMs ?? Number.MAX_SAFE_INTEGER);
}

function keepDryLine({ potPlan, deed }: Planned, naming: Naming): KeepDryLine {
  const { words } = naming;
  const pot = naming.potName(potPlan.potId);
  const until = deed.until === undefined ? null : words.say("deed.until", { untilDay: deed.until });
  const reason = reasonLine(deed.reason, naming);
  const sentence =
    until === null
      ? words.say("brief.keep-dry", { pot, reason })
      : words.say("brief.keep-dry-until", { pot, until, reason });
  return { potId: potPlan.potId, pot, until, reason, sentence };
}

function comingDays(later: readonly Planned[], naming: Naming): ComingDay[] {
  const { plan, words } = naming;
  const byDay = groupedBy(later, ({ deed }) => dueDay(deed, plan));
  return plan.days
    .filter(({ day }) => day > plan.forDay)
    .map((outline) => {
      const deeds = (byDay.get(outline.day) ?? [])
        .map((one) => deedLine({ ...one, naming: naming.onDay(outline.day) }))
        .sort(byHour);
      return {
        day: outline.day,
        name: words.day(outline.day),
        sky: comingSky(outline, naming),
        deeds: groupedDeeds(deeds, naming),
        handled: handledDeeds(deeds, naming),
      };
    });
}

function changeLines({ plan, words, potName }: Naming): string[] {
  return plan.changesSince.map((change) =>
    words.say(`brief.change.${change.because}`, {
      pot: potName(change.potId),
      was: words.say(`state.${change.was}`),
      is: words.say(`state.${change.is}`),
    }),
  );
}
