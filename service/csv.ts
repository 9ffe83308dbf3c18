import papa from "papaparse";

/**
 * Rows as comma-separated values (RFC 4180, lines end in CR LF). A text that a spreadsheet would run as a formula gets an
 * apostrophe in front.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.length === 0 ? "" : `${papa.unparse(rows.map((row) => row.map(guarded)))}\r\n`;
}

/** The reverse; lines may end in LF alone, and empty lines are passed over. */
export function csvRows(text: string): string[][] {
  const rows = tableRows(text, ",").map((row) => row.map((cell) => cell.replace(GUARDED, "")));
  return rows.filter((row) => row.length > 1 || row[0] !== "");
}

/** Every line of a table as its cells, by RFC 4180 but for what parts the cells; an empty line is one empty cell. */
export function tableRows(text: string, delimiter: string): string[][] {
  return papa.parse<string[]>(text, { delimiter }).data;
}

/** A table that a grower writes on from; a cell that holds any of the usual marks between cells is quoted. */
export function exampleText(rows: readonly (readonly string[])[], delimiter: string): string {
  return papa.unparse(rows as string[][], {
    delimiter,
    newline: "\n",
    quotes: (cell) => /[\t;,"]/.test(String(cell)),
  });
}

const FORMULA = /^[=+\-@\t\r]/;
const GUARDED = /^'(?='*[=+\-@\t\r])/;

const guarded = (text: string) => (FORMULA.test(text.replace(/^'+/, "")) ? `'${text}` : text);
