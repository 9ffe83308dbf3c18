import { DEPTHS_CM, MATERIALS, tableLines, tankBesideColumn } from "./tank-beside-column.ts";

// Run by hand: node tests/core/pot/richards/print-table.ts
const rows = MATERIALS.flatMap((material) => DEPTHS_CM.map((depthCm) => tankBesideColumn(material, depthCm)));
process.stdout.write(`${tableLines(rows).join("\n")}\n`);
