import { IntlMessageFormat, MissingValueError } from "intl-messageformat";
import { calendarDay } from "../../core/site/local-days.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import { clockText, daysBetween, dayText, weekdayText } from "./clock.ts";
import { EN, type MessageKey } from "./en.ts";
import { figureOf, figureText } from "./figures.ts";
import type { Figure, Units } from "./units.ts";

export type Arguments = Readonly<Record<string, number | string | undefined>>;

/** Everything that turns codes and numbers into words, for one language and one set of measures. */
export interface Words {
  readonly language: string;
  readonly units: Units;
  /** The sentence of a message. @throws RangeError when a figure that it names is missing. */
  say(key: MessageKey, args?: Arguments): string;
  /** The sentence, or undefined when the key is unknown or a figure that it names is missing. */
  trySay(key: string, args?: Arguments): string | undefined;
  /** Number and unit apart, by the unit at the end of the name. */
  figure(name: string, value: number): Figure | undefined;
  clock(utcMs: number, zone: string): string;
  day(day: CalendarDay, width?: "long" | "short"): string;
  /** The weekday alone, shortened: "Wed". */
  weekday(day: CalendarDay): string;
  /** The hour, with the day where it is not `today`: "14:00", "14:00 tomorrow", "06:00 on Friday". */
  when(utcMs: number, at: { zone: string; today: CalendarDay }): string;
  list(items: readonly string[]): string;
}

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** One catalogue a language; a language without one falls back to English, sentence by sentence never mixed. */
const CATALOGUES: Readonly<Record<string, Readonly<Record<MessageKey, string>>>> = { en: EN };

/** Words for a locale such as "en" and the grower's measures. */
export function wordsFor(locale: string, units: Units): Words {
  const language = new Intl.Locale(locale).language;
  const catalogue = CATALOGUES[language] ?? EN;
  const format = formatLocale(locale, units);
  const lists = new Intl.ListFormat(format, { type: "conjunction" });
  const messages = new Map<string, IntlMessageFormat>();
  const messageOf = (key: string): IntlMessageFormat | undefined => {
    const text = catalogue[key as MessageKey];
    if (text === undefined) return undefined;
    const message = messages.get(key) ?? new IntlMessageFormat(text, format, undefined, { ignoreTag: true });
    messages.set(key, message);
    return message;
  };
  const spoken = (args: Arguments): Record<string, unknown> =>
    Object.fromEntries(Object.entries(args).map(([name, value]) => [name, argumentText(name, value)]));
  const argumentText = (name: string, value: number | string | undefined): unknown => {
    if (typeof value === "string" && name.endsWith("Day") && ISO_DAY.test(value))
      return dayText(value as CalendarDay, format);
    if (typeof value !== "number") return value;
    if (!Number.isFinite(value)) return undefined;
    const figure = figureOf({ name, value }, units, format);
    return figure ? figureText(figure) : value;
  };
  const trySay = (key: string, args: Arguments = {}): string | undefined => {
    const message = messageOf(key);
    if (!message) return undefined;
    try {
      const given = Object.entries(spoken(args)).filter(([, value]) => value !== undefined);
      return String(message.format(Object.fromEntries(given) as Record<string, string>));
    } catch (error) {
      if (error instanceof MissingValueError) return undefined;
      throw error;
    }
  };
  const say = (key: MessageKey, args?: Arguments): string => {
    const sentence = trySay(key, args);
    if (sentence === undefined) throw new RangeError(`message ${key} lacks a figure that it names`);
    return sentence;
  };
  const whenText = (utcMs: number, at: { zone: string; today: CalendarDay }): string => {
    const day = calendarDay(utcMs, at.zone);
    const clock = clockText(utcMs, at.zone, format);
    const ahead = daysBetween(at.today, day);
    if (ahead === 0) return clock;
    if (ahead === 1) return say("when.tomorrow", { clock });
    return say("when.day", { clock, onDay: day });
  };
  return {
    language,
    units,
    trySay,
    say,
    figure: (name, value) => figureOf({ name, value }, units, format),
    clock: (utcMs, zone) => clockText(utcMs, zone, format),
    day: (day, width) => dayText(day, format, width),
    weekday: (day) => weekdayText(day, format),
    when: (utcMs, at) => whenText(utcMs, at),
    list: (items) => lists.format(items),
  };
}

/** Hours and dates follow the region; English without one has two customs, and the measures tell which. */
function formatLocale(locale: string, units: Units): string {
  const { language, region } = new Intl.Locale(locale);
  if (!CATALOGUES[language]) return formatLocale("en", units);
  if (language !== "en" || region !== undefined) return locale;
  return units === "us" ? "en-US" : "en-GB";
}
