import type { Outcome } from "../../core/problem.ts";

/**
 * Reads a text as JSON, or tells where it stops being JSON and what to do about it.
 * @param firstLine  number of the text's first line in what was read, from 1
 */
export function parseJson(text: string, firstLine = 1): Outcome<unknown> {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    const data =
      text.trim() === ""
        ? { detail: "nothing was given", next: "give JSON on standard input" }
        : faultIn(text, { detail: (error as SyntaxError).message, firstLine });
    return { ok: false, problems: [{ code: "not-json", path: [], data }] };
  }
}

function faultIn(text: string, { detail, firstLine }: { detail: string; firstLine: number }) {
  const at = faultAt(text);
  const before = text.slice(0, at).split("\n");
  const column = before[before.length - 1]!.length + 1;
  return {
    detail: detail.replace(/ (in JSON )?at position .*$/, ""),
    line: firstLine + before.length - 1,
    column,
    next: nextStep(text, at),
  };
}

function nextStep(text: string, at: number): string {
  if (at >= text.trimEnd().length) return "the text ends too soon: close every quote, bracket and brace";
  if (isWhole(text.slice(0, at)))
    return "a whole value ends before this place: take the rest away, or give it a line of its own where lines are read";
  return "mend the text at this place: names and words in double quotes, numbers as 0.5, no comma after the last";
}

/** Index of the first character that cannot stand where it does; the engine names it only for some faults. */
function faultAt(text: string): number {
  let sound = 0;
  let broken = text.length + 1;
  while (broken - sound > 1) {
    const middle = (sound + broken) >> 1;
    if (canGoOn(text.slice(0, middle))) sound = middle;
    else broken = middle;
  }
  return sound;
}

/** Whether the text is JSON so far, whole or not: the engine finds no fault before its end. */
function canGoOn(start: string): boolean {
  try {
    JSON.parse(start);
    return true;
  } catch (error) {
    const { message } = error as SyntaxError;
    const at = /at position (\d+)/.exec(message)?.[1];
    return at === undefined ? message.startsWith("Unexpected end") : Number(at) >= start.length;
  }
}

function isWhole(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
