import type { Brief, DeedGroup, SignLine } from "./brief-value.ts";

/** The brief as plain text for a terminal, a log or a mail. */
export function briefText(brief: Brief, { widthChars = 78 }: { widthChars?: number } = {}): string {
  const blocks = [
    [
      ...(brief.demo === null ? [] : [brief.demo]),
      underlined(brief.title),
      ...brief.timing,
      ...brief.sky,
      brief.lead,
    ],
    ...brief.stops.map((stop) => [underlined(stop.name, "-"), ...stop.groups.flatMap(groupText)]),
    section(
      brief.keepDry.heading,
      brief.keepDry.lines.map(({ sentence }) => `- ${sentence}`),
    ),
    section(brief.signs.heading, brief.signs.lines.flatMap(signText)),
    section(
      brief.care.heading,
      brief.care.lines.map((line) => `- ${line}`),
    ),
    [brief.evening ?? ""],
    [brief.stops.length === 0 ? "" : brief.nothing.sentence],
    section(
      brief.cautions.heading,
      brief.cautions.lines.map((line) => `- ${line.sentence}`),
    ),
    section(brief.coming.heading, [
      ...brief.spells.map((line) => `- ${line}`),
      ...brief.coming.lines.flatMap((day) => [
        `- ${day.name}: ${day.sky}`,
        ...day.deeds.map((line) => `  - ${line}`),
      ]),
    ]),
    section(
      brief.windows.heading,
      brief.windows.lines.map((line) => `- ${line}`),
    ),
    section(
      brief.changes.heading,
      brief.changes.lines.map((line) => `- ${line}`),
    ),
    [
      ...section(
        brief.trust.heading,
        brief.trust.lines.map((line) => `- ${line}`),
      ),
      brief.trust.credit,
    ],
  ];
  return `${blocks
    .map((lines) => lines.filter((line) => line !== ""))
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.flatMap((line) => wrapped(line, widthChars)).join("\n"))
    .join("\n\n")}\n`;
}

function groupText(group: DeedGroup): string[] {
  return [
    `[ ] ${group.sentence}`,
    ...group.items.map((item) => `    - ${item}`),
    `    ${group.reason} (${group.confidence})`,
    ...group.notes.map((note) => `    ${note}`),
  ];
}

function signText({ pot, seen, causes, check, meanwhile, notes }: SignLine): string[] {
  const lines = [causes, check, ...(meanwhile === null ? [] : [meanwhile]), ...notes];
  return [`- ${pot}: ${seen}`, ...lines.map((line) => `  ${line}`)];
}

function section(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [underlined(heading, "-"), ...lines];
}

function underlined(text: string, stroke = "="): string {
  return `${text}\n${stroke.repeat([...text].length)}`;
}

/** Breaks a line at spaces; the lines that follow keep its indent, past a bullet or a box. */
function wrapped(line: string, widthChars: number): string[] {
  if (line.includes("\n")) return line.split("\n");
  const indent = " ".repeat(/^\s*(?:- |\[ \] )?/.exec(line)?.[0].length ?? 0);
  const rows: string[] = [];
  let row = "";
  for (const word of line.trimEnd().split(/(?<=\S) (?=\S)/)) {
    if (row !== "" && [...row].length + 1 + [...word].length > widthChars) {
      rows.push(row);
      row = indent + word;
    } else row = row === "" ? word : `${row} ${word}`;
  }
  return [...rows, row].map((text) => text.replaceAll("\u00a0", " "));
}
