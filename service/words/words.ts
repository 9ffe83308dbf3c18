import { IntlMessageFormat, MissingValueError } from "intl-messageformat";
import { calendarDay } from "../../core/site/local-days.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import { type Clock, clockOf, type DayManner, daysBetween, dayText, weekdayText } from "./clock.ts";
import { EN, type MessageKey } from "./en.ts";
import { figureOf, figureText } from "./figures.ts";
import { numberFormat } from "./formatters.ts";
import { CATALOGUES, type Catalogue, type Language, languageOf } from "./languages.ts";
import { countedNames, startsWithDay } from "./message-shape.ts";
import type { Figure, Units } from "./units.ts";

export type Arguments = Readonly<Record<string, number | string | undefined>>;

/** Everything that turns codes and numbers into words, for one language and one set of measures. */
export interface Words {
  readonly language: Language;
  /** How figures, dates and hours are written: the locale asked for, or the usual one of the language. */
  readonly locale: string;
  readonly units: Units;
  /** The sentence of a message. @throws RangeError when a figure that it names is missing. */
  say(key: MessageKey, args?: Arguments): string;
  /** The sentence, or undefined when the key is unknown or a figure that it names is missing. */
  trySay(key: string, args?: Arguments): string | undefined;
  /** Number and unit apart, by the unit at the end of the name. */
  figure(name: string, value: number): Figure | undefined;
  /** A plain number in the grower's numerals. */
  number(value: number): string;
  clock(utcMs: number, zone: string): string;
  /** A day as a heading has it: "Wednesday 12 May". */
  day(day: CalendarDay, manner?: DayManner): string;
  /** The weekday alone, shortened: "Wed". */
  weekday(day: CalendarDay): string;
  /** The hour, with the day where it is not `today`: "14:00", "14:00 tomorrow", "06:00 on Friday". */
  when(utcMs: number, at: { zone: string; today: CalendarDay }): string;
  list(items: readonly string[]): string;
}

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;
const known = new Map<string, Words>();

/** Words for a locale such as "en" or "bn-IN-u-nu-latn" and the grower's measures. */
export function wordsFor(locale: string, units: Units): Words {
  const key = `${units} ${locale}`;
  const words = known.get(key) ?? newWords(locale, units);
  known.set(key, words);
  return words;
}

interface Message {
  readonly format: IntlMessageFormat;
  /** Arguments that are counted in words and must stay numbers. */
  readonly counted: ReadonlySet<string>;
  readonly startsWithDay: boolean;
}

function newWords(asked: string, units: Units): Words {
  const language = languageOf(asked);
  const locale = formatLocale(asked, units);
  const messages = messagesOf(CATALOGUES[language], locale);
  const lists = new Intl.ListFormat(locale, { type: "conjunction" });
  const unitText = (unit: string): string => trySay(`unit.${unit}`) ?? unit;
  const figure = (name: string, value: number): Figure | undefined =>
    figureOf({ name, value }, { units, locale, unitText });
  const argumentText = (name: string, value: number | string | undefined, message: Message): unknown => {
    if (typeof value === "string" && name.endsWith("Day") && ISO_DAY.test(value))
      return dayText(value as CalendarDay, locale);
    if (typeof value !== "number") return value;
    if (!Number.isFinite(value)) return undefined;
    const found = figure(name, value);
    if (found) return figureText(found);
    return message.counted.has(name) ? value : plainNumber(value, locale);
  };
  const trySay = (key: string, args: Arguments = {}): string | undefined => {
    const message = messages(key);
    if (!message) return undefined;
    try {
      const given = Object.entries(args)
        .map(([name, value]) => [name, argumentText(name, value, message)] as const)
        .filter(([, value]) => value !== undefined);
      const text = String(message.format.format(Object.fromEntries(given) as Record<string, string>));
      return message.startsWithDay ? capitalised(text, locale) : text;
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
  const clock = (utcMs: number, zone: string): string => clockText(clockOf(utcMs, zone, locale), say);
  const when = (utcMs: number, { zone, today }: { zone: string; today: CalendarDay }): string => {
    const day = calendarDay(utcMs, zone);
    const ahead = daysBetween(today, day);
    if (ahead === 0) return clock(utcMs, zone);
    if (ahead === 1) return say("when.tomorrow", { clock: clock(utcMs, zone) });
    return say("when.day", { clock: clock(utcMs, zone), onDay: day });
  };
  return {
    language,
    locale,
    units,
    trySay,
    say,
    figure,
    number: (value) => plainNumber(value, locale),
    clock,
    day: (day, manner) => {
      const text = dayText(day, locale, manner);
      return manner?.amid ? text : capitalised(text, locale);
    },
    weekday: (day) => weekdayText(day, locale),
    when,
    list: (items) => lists.format(items),
  };
}

/** Messages of a catalogue, each parsed when it is first said. */
function messagesOf(catalogue: Catalogue, locale: string): (key: string) => Message | undefined {
  const parsed = new Map<string, Message>();
  return (key) => {
    const text = catalogue[key as MessageKey] ?? EN[key as MessageKey];
    if (text === undefined) return undefined;
    const message = parsed.get(key) ?? parsedMessage(text, locale);
    parsed.set(key, message);
    return message;
  };
}

function parsedMessage(text: string, locale: string): Message {
  const format = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true });
  const shape = format.getAst();
  return { format, counted: countedNames(shape), startsWithDay: startsWithDay(shape) };
}

function clockText(clock: Clock, say: Words["say"]): string {
  return clock.half === null ? clock.hour : say("clock.half-day", { ...clock, half: clock.half });
}

/** Years and counts in the grower's numerals, without marks between thousands. */
function plainNumber(value: number, locale: string): string {
  return numberFormat(locale, { mostDigits: 3, grouped: false }).format(value);
}

/** Some languages write days small; at the head of a line they begin with a capital as everything does. */
export function capitalised(text: string, locale: string): string {
  return text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);
}

/** Hours and dates follow the region; English without one has two customs, and the measures tell which. */
function formatLocale(asked: string, units: Units): string {
  const { language, region } = new Intl.Locale(asked);
  if (language !== languageOf(asked)) return formatLocale("en", units);
  if (language !== "en" || region !== undefined) return asked;
  return new Intl.Locale(asked, { region: units === "us" ? "US" : "GB" }).toString();
}
