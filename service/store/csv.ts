/**
 * Rows as comma-separated values (RFC 4180, lines end in CR LF). A text that a spreadsheet would run as a formula gets an
 * apostrophe in front.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(written).join(",")}\r\n`).join("");
}

/** The reverse; lines may end in LF alone, and empty lines at the end are passed over. */
export function csvRows(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let rest = text.replace(/^\uFEFF/, "");
  while (rest.length > 0) {
    const { value, length } = nextCell(rest);
    row.push(value);
    const end = rest.slice(length).match(/^(,|\r?\n|\r|$)/)?.[0] ?? "";
    rest = rest.slice(length + end.length);
    if (end === "," && rest.length > 0) continue;
    if (end === ",") row.push("");
    if (row.length > 1 || row[0] !== "") rows.push(row);
    row = [];
  }
  return rows;
}

const FORMULA = /^[=+\-@\t\r]/;
const GUARDED = /^'(?='*[=+\-@\t\r])/;

function written(text: string): string {
  const guarded = FORMULA.test(text.replace(/^'+/, "")) ? `'${text}` : text;
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

function nextCell(text: string): { value: string; length: number } {
  const quoted = text.match(/^"((?:[^"]|"")*)"/);
  const plain = quoted ? null : text.match(/^[^,\r\n]*/);
  const raw = quoted ? quoted[1]!.replaceAll('""', '"') : (plain?.[0] ?? "");
  return { value: raw.replace(GUARDED, ""), length: (quoted ?? plain)?.[0].length ?? 0 };
}
