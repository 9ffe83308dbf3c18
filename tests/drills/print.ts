/** A drill's result as a table of plain columns, for a terminal and for a note. */
export function printTable(rows: readonly Readonly<Record<string, string | number>>[]): void {
  const names = Object.keys(rows[0] ?? {});
  const cells = [names, ...rows.map((row) => names.map((name) => String(row[name] ?? "")))];
  const widths = names.map((_, column) => Math.max(...cells.map((row) => row[column]!.length)));
  printLines(
    cells.map((row) => `| ${row.map((cell, column) => cell.padEnd(widths[column]!)).join(" | ")} |`),
  );
}

export function printLines(lines: readonly string[]): void {
  for (const line of lines) process.stdout.write(`${line}\n`);
}
