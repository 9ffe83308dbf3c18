import type { JournalEntry } from "../../journal/entry.ts";
import type { CalendarDay } from "../../site/site.ts";
import { monthOf } from "../hours/day-axis.ts";
import type { MorningDeed, MorningView, Policy, PolicyRun } from "../policies/policy.ts";
import type { WorldPot } from "../world/world-pot.ts";
import { entriesOfMorning, plantedEntry } from "./diary.ts";
import { firstState, firstWetness } from "./first-state.ts";
import { PotCourse, utcMsOfHour } from "./pot-course.ts";
import type { Season } from "./season.ts";
import type { PotSeason } from "./season-result.ts";

export interface SeasonOutcome {
  readonly pots: readonly PotSeason[];
  readonly morningsWithWork: number;
}

/** Looks on each morning, when the policy has decided and nothing is done yet. */
export type Watch = (at: { day: number; month: number; courses: readonly PotCourse[] }) => void;

/** Plays a season under a policy, morning by morning. */
export function playSeason(season: Season, policy: Policy, watch?: Watch): SeasonOutcome {
  const courses = season.pots.map((pot, index) => courseOf(season, { pot, index }));
  const run = policy.begin(season.stage);
  const play: Play = { season, courses, run, pours: courses.map(() => 0) };
  run.noted?.(courses.flatMap((course) => firstEntries(season, course)));
  let morningsWithWork = 0;
  for (let day = season.fromDay; day < season.toDay; day++) {
    // Repotting happens whether or not anybody keeps a diary.
    const planted = repotted(play, day);
    run.noted?.(planted);
    const view = viewOf(play, day);
    const deeds = run.morning(view);
    watch?.({ day, month: view.month, courses });
    if (live(play, { day, date: view.date, deeds })) morningsWithWork++;
  }
  return { pots: courses.map((course) => course.result()), morningsWithWork };
}

/** A season while it is played. */
interface Play {
  readonly season: Season;
  readonly courses: readonly PotCourse[];
  readonly run: PolicyRun;
  /** Waterings so far, by pot. */
  readonly pours: number[];
}

function viewOf({ season, courses }: Play, day: number): MorningView {
  const date = season.axis.days[day]!.day;
  return {
    day,
    date,
    month: monthOf(date),
    nowUtcMs: utcMsOfHour(season.clock, season.clock.roundHour[day]!),
    outlook: season.outlookAt(day),
    normals: season.normals,
    pots: courses.map((course) => course.view(day)),
  };
}

/** Repots what is due and tells it as the diary does. */
function repotted({ season, courses }: Play, day: number): JournalEntry[] {
  const { axis, clock } = season;
  const atUtcMs = utcMsOfHour(clock, clock.roundHour[day]!);
  return courses.flatMap((course) => {
    if (!course.repotOn(day, axis.days[day]!.day)) return [];
    const { known } = course.pot;
    const mixWet = known.values.leafy ? "watered-in" : "dry";
    return [plantedEntry({ known, atUtcMs, id: `${known.pot.id}-${day}-repot`, anew: true, mixWet })];
  });
}

/** Does the morning's deeds and runs to the next; tells whether there was anything to do. */
function live(play: Play, of: { day: number; date: CalendarDay; deeds: readonly MorningDeed[] }): boolean {
  const { season, courses, run, pours } = play;
  const { day, date } = of;
  let works = false;
  const entries: JournalEntry[] = [];
  for (const [i, course] of courses.entries()) {
    const hands = run.noted === undefined ? null : handsBefore(course.hands(day));
    const done = course.live(day, date, of.deeds[i]!);
    if (done.pouredMl > 0) pours[i]!++;
    works ||= done.pouredMl > 0 || done.toSpot !== null || done.shielded;
    if (hands === null) continue;
    const { clock, stage } = season;
    entries.push(
      ...entriesOfMorning({
        known: course.pot.known,
        stage,
        day,
        potIndex: i,
        hands,
        done,
        pours: pours[i]!,
        roundUtcMs: utcMsOfHour(clock, clock.roundHour[day]!),
        carryUtcMs: utcMsOfHour(clock, done.carryHour),
      }),
    );
  }
  run.noted?.(entries);
  return works;
}

/** What the hands tell before the day moves the pot on. */
function handsBefore(hands: ReturnType<PotCourse["hands"]>): ReturnType<PotCourse["hands"]> {
  const feel = hands.feel();
  const dryToCm = hands.dryToCm();
  const massKg = hands.massKg();
  const jug = hands.pouredDrainedMl();
  return { feel: () => feel, dryToCm: () => dryToCm, massKg: () => massKg, pouredDrainedMl: () => jug };
}

/** Tender pots begin the year where the calendar has put them. */
function courseOf(season: Season, of: { pot: WorldPot; index: number }): PotCourse {
  return new PotCourse({ ...of, ...season, first: firstState(season, of.pot) });
}

/** Planted an hour before the season's first round, at home; carried where the season finds it. */
function firstEntries(season: Season, course: PotCourse): JournalEntry[] {
  const { clock, stage, fromDay } = season;
  const { known } = course.pot;
  const atUtcMs = utcMsOfHour(clock, clock.roundHour[fromDay]! - 1);
  const planted = plantedEntry({
    known,
    atUtcMs,
    id: `${known.pot.id}-first`,
    anew: false,
    mixWet: firstWetness(course.pot),
  });
  if (course.state.spot === known.homeSpot) return [planted];
  const moved: JournalEntry = {
    id: `${known.pot.id}-first-place`,
    atUtcMs,
    recordedUtcMs: atUtcMs,
    potId: known.pot.id,
    body: { kind: "moved", toSpotId: stage.spots[course.state.spot]!.id },
  };
  return [planted, moved];
}
