export type SpotId = string;

/** A stretch of the local clock in which something tall stands before the sun. */
export interface ShadeWindow {
  /** Local clock hours, 0 to 24; the window runs from `fromHour` to `toHour`. */
  readonly fromHour: number;
  readonly toHour: number;
  /** Share of the sun that still arrives, 0 to 1. */
  readonly sunFrac: number;
}

/** A roof edge or eave under which pots stand: dry until wind drives the rain in. */
export interface RoofEdge {
  /** Height of the edge above the pot rim. */
  readonly heightM: number;
  /** Horizontal distance of the pots behind the drip line. */
  readonly behindM: number;
}

/** What a spot can take in. Left out, there is room for all. */
export interface Room {
  readonly places?: number;
  readonly areaCm2?: number;
  readonly maxHeightCm?: number;
}

/**
 * A place where pots stand and what it lets through. All shares are 0 to 1, 1 meaning as in the open.
 */
export interface Spot {
  readonly id: SpotId;
  readonly name: string;
  readonly kind: "open" | "roof-edge" | "roofed" | "indoors";
  /** Share of the sky seen from the pots; governs night cooling and dim light. */
  readonly skyFrac: number;
  /** Share of the sun outside the shade windows. */
  readonly sunFrac: number;
  readonly shade?: readonly ShadeWindow[];
  /** Share of the wind at 2 m that reaches the pots. */
  readonly windFrac: number;
  /** Share of the rain that falls in when no roof edge is described. */
  readonly rainFrac: number;
  readonly roofEdge?: RoofEdge;
  /** Degrees added to the night minimum by walls and floors that give back warmth. */
  readonly nightWarmthC: number;
  /** Indoors only: the air does not go below / above these. */
  readonly heatedToC?: number;
  readonly room?: Room;
  /** Order of the morning walk; lower first. */
  readonly walkOrder: number;
  /** How far a carry from or to this spot goes; `same-level` unless stairs are in the way. */
  readonly carry?: "few-steps" | "same-level" | "stairs";
}
