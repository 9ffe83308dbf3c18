import { createHash } from "node:crypto";
import type { Collection } from "../../core/plan/collection.ts";
import type { Deed } from "../../core/plan/deed.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";
import { calendarDay } from "../../core/site/local-days.ts";
import type { BriefDeed } from "../brief/brief-value.ts";
import { deedLine } from "../brief/deed-line.ts";
import { asksForHands } from "../brief/due-day.ts";
import { groupedBy } from "../brief/grouped-by.ts";
import { groupedDeeds } from "../brief/grouped-deeds.ts";
import { type Naming, namingFor } from "../brief/naming.ts";
import type { Words } from "../words/words.ts";

export interface CalendarEvent {
  /** The same for the same deed of the same day, whatever else about it changes. */
  readonly uid: string;
  readonly summary: string;
  readonly lines: readonly string[];
  readonly when:
    | { readonly kind: "hours"; readonly startUtcMs: number; readonly endUtcMs: number }
    /** A calendar day, YYYY-MM-DD. */
    | { readonly kind: "day"; readonly day: string };
}

export interface CalendarInput {
  readonly plan: Plan;
  readonly collection: Collection;
  readonly words: Words;
  readonly houseId: string;
}

/** Shown for a deed that has an hour but no length. Chosen by us. */
const DEED_MS = 30 * 60_000;

/** Shelter, watering, ends of waiting and dry hours, as events; deeds alike on one day are one event. */
export function calendarEvents(input: CalendarInput): CalendarEvent[] {
  return [...deedEvents(input), ...waitingEvents(input), ...windowEvents(input)];
}

interface Dated {
  readonly line: BriefDeed;
  readonly day: string;
}

function deedEvents(input: CalendarInput): CalendarEvent[] {
  const naming = namingFor(input);
  const dated = input.plan.pots.flatMap((potPlan) =>
    [potPlan as Deed, ...potPlan.then]
      .filter(asksForHands)
      .map((deed) => datedLine({ potPlan, deed, naming })),
  );
  const alike = groupedBy(dated, ({ line, day }) => JSON.stringify([line.action, line.toSpotId, day]));
  return [...alike].map(([key, group]) => {
    const lines = group.map(({ line }) => line);
    const due = lines.flatMap(({ dueUtcMs }) => dueUtcMs ?? []);
    const sentences = groupedDeeds(lines, naming);
    return {
      uid: uidOf(input, key),
      summary: sentences.length === 1 ? sentences[0]! : deedsSummary(lines, naming),
      lines: lines.map(({ sentence, reason }) => `${sentence} ${reason}`),
      when:
        due.length === 0
          ? { kind: "day", day: group[0]!.day }
          : { kind: "hours", startUtcMs: Math.min(...due) - DEED_MS, endUtcMs: Math.min(...due) },
    };
  });
}

function datedLine({ potPlan, deed, naming }: { potPlan: PotPlan; deed: Deed; naming: Naming }): Dated {
  const { plan } = naming;
  const start = deed.from ?? deed.by;
  const day = start === undefined ? plan.forDay : calendarDay(Date.parse(start), plan.zone);
  return { line: deedLine({ potPlan, deed, naming: naming.onDay(day) }), day };
}

function deedsSummary(lines: readonly BriefDeed[], { words }: Naming): string {
  return words.say("deed.sentence", {
    verb: lines[0]!.verb,
    details: words.list(lines.map(({ pot }) => pot)),
  });
}

/** Last days of keeping dry, and of what else waits until roots have taken. */
function waitingEvents(input: CalendarInput): CalendarEvent[] {
  const { plan, words } = input;
  const { potName } = namingFor(input);
  return plan.pots.flatMap(({ potId, outlook, holds = [] }) => {
    const pot = potName(potId);
    const ends = [
      { kind: "dry", until: outlook.dryUntil },
      ...holds.map(({ kind, until }) => ({ kind, until })),
    ] as const;
    return ends.flatMap(({ kind, until }) =>
      until === null
        ? []
        : [
            {
              uid: uidOf(input, JSON.stringify(["waiting", kind, potId])),
              summary: words.say(`calendar.last-day.${kind}`, { pot }),
              lines: [],
              when: { kind: "day" as const, day: until },
            },
          ],
    );
  });
}

function windowEvents(input: CalendarInput): CalendarEvent[] {
  const { plan, words } = input;
  return plan.workWindows.map(({ from, to, dryShareFrac }) => ({
    uid: uidOf(input, JSON.stringify(["dry-hours", from])),
    summary: words.say("calendar.window"),
    lines: [words.say("calendar.window-share", { dryShareFrac })],
    when: { kind: "hours", startUtcMs: Date.parse(from), endUtcMs: Date.parse(to) },
  }));
}

/** RFC 5545 section 3.8.4.7: unlike any other in the world; tells nothing of house or pot. */
function uidOf({ houseId, plan }: CalendarInput, what: string): string {
  const digest = createHash("sha256")
    .update(JSON.stringify([houseId, plan.siteId, what]))
    .digest("hex");
  return `${digest.slice(0, 32)}@leebench.invalid`;
}
