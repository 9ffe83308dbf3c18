import { daysToNeed } from "./next-need.ts";
import type { PotStand } from "./pot-stand.ts";

export const ORDERS = ["bench", "need"] as const;
export const NEEDS = ["today", "soon", "keep-dry"] as const;

/** Which pots are shown on the shelves, and in which order. */
export interface ShelfView {
  readonly order: (typeof ORDERS)[number];
  readonly need: (typeof NEEDS)[number] | null;
  readonly spotId: string;
  /** Part of a name. */
  readonly name: string;
}

/** What "soon" covers; chosen by us: a weekend away. */
const SOON_DAYS = 3;

/** From the address of the page; what it does not know is left out. */
export function shelfViewOf(asked: Readonly<Record<string, string | undefined>>): ShelfView {
  return {
    order: ORDERS.find((order) => order === asked.order) ?? "bench",
    need: NEEDS.find((need) => need === asked.need) ?? null,
    spotId: asked.spot ?? "",
    name: (asked.name ?? "").trim(),
  };
}

/** The same view as an address. */
export function shelfAddress({ order, need, spotId, name }: ShelfView): string {
  const fields = new URLSearchParams({
    ...(order === "bench" ? {} : { order }),
    ...(need === null ? {} : { need }),
    ...(spotId === "" ? {} : { spot: spotId }),
    ...(name === "" ? {} : { name }),
  }).toString();
  return fields === "" ? "/pots" : `/pots?${fields}`;
}

/** Whether some pots of a bench may be out of sight. */
export function isNarrowed({ need, name }: ShelfView): boolean {
  return need !== null || name !== "";
}

/** The pots of the view, the neediest first. */
export function standsInView(stands: readonly PotStand[], view: ShelfView): PotStand[] {
  const wanted = view.name.toLocaleLowerCase();
  return stands
    .filter((stand) => view.spotId === "" || stand.spotId === view.spotId)
    .filter(({ pot }) => pot.name.toLocaleLowerCase().includes(wanted))
    .filter((stand) => view.need === null || asksFor(stand, view.need))
    .sort(byNeed);
}

/** Pots of one bench that nothing speaks against watering. */
export function mayBeWatered(stands: readonly PotStand[], spotId: string): PotStand[] {
  return stands.filter((stand) => stand.spotId === spotId && !asksFor(stand, "keep-dry"));
}

function asksFor({ need }: PotStand, asked: NonNullable<ShelfView["need"]>): boolean {
  if (!need) return false;
  if (asked === "keep-dry") return need.isKeptDry;
  return asked === "today" ? need.deed?.days === 0 : daysToNeed(need) <= SOON_DAYS;
}

function byNeed(a: PotStand, b: PotStand): number {
  const days = ({ need }: PotStand) => (need ? daysToNeed(need) : -1);
  return days(a) - days(b) || (a.pot.name < b.pot.name ? -1 : 1);
}
