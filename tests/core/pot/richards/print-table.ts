import { DEPTHS_CM, MATERIALS, tableLines, tankBesideColumn } from "./tank-beside-column.ts";

/** Prints how far the tank's drained content and drying course lie from the Richards column's. */
export function printColumnTable(): void {
  const rows = MATERIALS.flatMap((material) =>
    DEPTHS_CM.map((depthCm) => tankBesideColumn(material, depthCm)),
  );
  process.stdout.write(`${tableLines(rows).join("\n")}\n`);
}
