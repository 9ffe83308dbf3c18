import { dryDays } from "../../plant/care-days.ts";
import type { PotView } from "./policy.ts";

/** Within the usual days of keeping dry after root work, by the calendar; everybody who repots knows them. */
export function hasFreshCut(pot: PotView): boolean {
  const { values, repot } = pot.known;
  if (values.leafy || pot.roots === "settled" || repot === null) return false;
  return pot.sincePlantedDays < dryDays({ roots: repot.roots, leafy: values.leafy }, [pot.known.pot.dryDays]);
}
