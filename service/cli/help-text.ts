import type { Positional, Verb } from "./verb.ts";
import type { VerbEntry } from "./verbs.ts";

const WIDTH_CHARS = 88;
const EXIT_CODES =
  "Exit codes: 0 done; 1 bad input, every problem listed as code, path and data; 2 the feed or the store failed.";

/** The help of the whole command: one line a verb. */
export function commandHelp(verbs: readonly VerbEntry[]): string {
  return [
    "leebench <verb> [options]",
    "",
    "Plans watering, shelter and aftercare for plants in pots from the weather that is coming.",
    "",
    "Verbs:",
    ...table(verbs.map(({ name, summary }) => [name, summary])),
    "",
    "leebench <verb> --help tells more about one of them.",
    ...wrapped(EXIT_CODES),
    "",
  ].join("\n");
}

/** The help of one verb. */
export function verbHelp(name: string, verb: Verb): string {
  const options = Object.entries(verb.options).map(([option, { value, about }]) => [
    value ? `--${option} <${value}>` : `--${option}`,
    about,
  ]);
  return [
    usageLine(name, verb),
    "",
    ...verb.about.flatMap((paragraph) => [...wrapped(paragraph), ""]),
    ...verb.positionals.flatMap(positionalHelp),
    "Options:",
    ...table([...options, ["--help", "show this text"]]),
    "",
    ...wrapped(EXIT_CODES),
    "",
  ].join("\n");
}

/** Every option in one line, as long as one line holds them. */
function usageLine(name: string, verb: Verb): string {
  const words = ["leebench", name, ...verb.positionals.map((word) => `<${word.name}>`)];
  const whole = [...words, ...usageOf(verb)].join(" ");
  return whole.length <= WIDTH_CHARS ? whole : [...words, "[options]"].join(" ");
}

function usageOf(verb: Verb): string[] {
  return Object.entries(verb.options).map(([name, { value }]) =>
    value ? `[--${name} <${value}>]` : `[--${name}]`,
  );
}

function positionalHelp({ name, about, choices }: Positional): string[] {
  const rows = Object.entries(choices ?? {});
  return [...wrapped(`<${name}>: ${about}`), ...table(rows), ""];
}

function table(rows: readonly (readonly string[])[]): string[] {
  const widest = Math.max(0, ...rows.map(([left = ""]) => left.length));
  return rows.flatMap(([left = "", right = ""]) => {
    const [first = "", ...more] = wrapped(right, WIDTH_CHARS - widest - 4);
    return [`  ${left.padEnd(widest)}  ${first}`, ...more.map((line) => `  ${" ".repeat(widest)}  ${line}`)];
  });
}

function wrapped(text: string, widthChars = WIDTH_CHARS): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line && line.length + 1 + word.length > widthChars) {
      lines.push(line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return [...lines, line];
}
