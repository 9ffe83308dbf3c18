import { isColdTime } from "../policies/calendar-cover.ts";
import { settledState } from "../world/plant-out.ts";
import type { WorldPot } from "../world/world-pot.ts";
import type { WorldState } from "../world/world-state.ts";
import type { Season } from "./season.ts";

/** A pot as it stands on the season's first round. */
export function firstState(season: Season, pot: WorldPot): WorldState {
  const hour = season.clock.roundHour[season.fromDay]!;
  const at = { hour, spot: firstSpot(season, pot), mixWet: firstWetness(pot) };
  return settledState({ clock: season.clock, pot }, at);
}

/** In midwinter plants that store water stand dry. */
export function firstWetness({ known }: WorldPot): "dry" | "moist" {
  return known.values.leafy ? "moist" : "dry";
}

function firstSpot({ stage, axis, normals, fromDay }: Season, pot: WorldPot): number {
  const cold = isColdTime({ normals, date: axis.days[fromDay]!.day }, pot);
  const room = stage.spots.findIndex(({ kind }) => kind === "indoors");
  return cold && room >= 0 ? room : pot.known.homeSpot;
}
