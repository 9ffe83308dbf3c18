import { calendarDay } from "../../../core/site/local-days.ts";
import type { Fault } from "../../jobs/fault-note.ts";
import type { Words } from "../../words/words.ts";
import { whenText } from "../journal/when-text.ts";

/** What every part of the status page needs to put instants and codes into words. */
export interface Saying {
  readonly words: Words;
  readonly nowUtcMs: number;
  readonly zone: string;
  /** An hour of today alone, of another day with its day. */
  time(utcMs: number): string;
  /** What happened, and what helps. */
  fault(fault: Fault): string;
}

export function sayingFor(input: { words: Words; zone: string; nowUtcMs: number }): Saying {
  const { words, zone, nowUtcMs } = input;
  const today = calendarDay(nowUtcMs, zone);
  return {
    ...input,
    time: (utcMs) =>
      calendarDay(utcMs, zone) === today ? words.clock(utcMs, zone) : whenText(utcMs, { zone, today }, words),
    fault: (fault) => faultText(fault, words),
  };
}

function faultText({ code, feed, next }: Fault, words: Words): string {
  const what = words.trySay(`fault.${code}`) ?? words.say("fault.other", { code });
  const named =
    words.trySay(`status.feed.${feed}`, { fault: what }) ?? `${what[0]?.toUpperCase()}${what.slice(1)}`;
  // Where only time helps, the page says anyway when it is asked again.
  const helps = next === null || next === "wait" ? undefined : words.trySay(`next-step.${next}`);
  return helps === undefined ? named : `${named} ${helps}`;
}
