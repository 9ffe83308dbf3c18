import { z } from "zod";

// Messages are problem codes; the catalogue has the sentences.

/** Text that is needed, without the spaces around it. */
export const neededText = (longest = 200) =>
  z.string("missing").trim().min(1, "missing").max(longest, "text-too-long");

/** Text that may be left out; empty becomes undefined. */
export const freeText = (longest = 2000) =>
  z
    .string()
    .trim()
    .max(longest, "text-too-long")
    .transform((text) => (text === "" ? undefined : text))
    .optional();

interface Limits {
  readonly from: number;
  readonly to: number;
  readonly whole?: boolean;
}

/** Where the digits of Devanagari and Bengali begin in Unicode. */
const ZEROS = [0x966, 0x9e6];

/** Digits as a grower's keyboard writes them. */
function inLatinDigits(text: string): string {
  return text.replace(/[\u0966-\u096f\u09e6-\u09ef]/g, (digit) => {
    const code = digit.charCodeAt(0);
    return String(code - ZEROS.findLast((zero) => zero <= code)!);
  });
}

/** A number as typed, with a point or a comma; empty is undefined. */
export const maybeNumber = (limits: Limits) =>
  z
    .string()
    .trim()
    .transform((text, context): number | undefined => {
      if (text === "") return undefined;
      const digits = inLatinDigits(text);
      const value = /^[+\-−]?\d*([.,]\d+)?$/.test(digits)
        ? Number(digits.replace(",", ".").replace("−", "-"))
        : Number.NaN;
      const code = faultOf(value, limits);
      if (code === null) return value;
      context.addIssue({ code: "custom", message: code, params: { from: limits.from, to: limits.to } });
      return z.NEVER;
    })
    .optional();

/** The same, but needed. */
export const neededNumber = (limits: Limits) =>
  maybeNumber(limits).transform((value, context): number => {
    if (value !== undefined) return value;
    context.addIssue({ code: "custom", message: "missing", params: {} });
    return z.NEVER;
  });

/** A meridian or parallel by its letters, e.g. those of north and south. */
interface Hemispheres {
  readonly to: number;
  readonly positive: string;
  readonly negative: string;
}

/** Degrees of a place, by sign or by letter: "-9.14", "9,14 W", "38.7° N". */
export const neededDegrees = ({ to, positive, negative }: Hemispheres) =>
  z
    .string("missing")
    .transform((text): string | undefined => {
      const [, before = "", degrees = text, after = ""] =
        /^(\p{L}?)\s*(\S+?)\s*°?\s*(\p{L}?)$/u.exec(text.trim()) ?? [];
      const letters = (before + after).toUpperCase();
      if (letters === "") return degrees;
      // A sign beside a letter could mean either side.
      if (letters.length > 1 || /^[+\-−]/.test(degrees)) return text;
      return negative.includes(letters) ? `-${degrees}` : positive.includes(letters) ? degrees : text;
    })
    .pipe(neededNumber({ from: -to, to }));

function faultOf(value: number, { from, to, whole }: Limits): string | null {
  if (!Number.isFinite(value)) return "not-a-number";
  if (value < from || value > to) return "out-of-range";
  return whole && !Number.isInteger(value) ? "not-whole" : null;
}

/** One of a list. */
export const choice = <const T extends readonly [string, ...string[]]>(values: T) =>
  z.enum(values, "not-chosen");

/** A calendar day. */
export const neededDay = () => z.iso.date("not-a-day");

/** Id given by the form, so that a form sent twice is one entry. */
export const formId = () => z.string("missing").regex(/^[\w.:-]{8,100}$/, "form-id");
