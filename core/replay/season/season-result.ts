import { HARM_TERMS } from "../world/harm-terms.ts";

/** How one pot fared through a season under one policy. */
export interface PotSeason {
  readonly potId: string;
  readonly groupId: string;
  /** By term, in the order of HARM_TERMS; damage until the plant was lost, wear through the whole year. */
  readonly harmByTerm: number[];
  /** All terms; what damages counts up to 1, the plant lost. */
  readonly harm: number;
  readonly lost: boolean;
  /** Carries, pours and days away from its place in harm, by the planner's own prices. */
  readonly trouble: number;
  readonly pours: number;
  readonly litres: number;
  readonly carries: number;
  /** Covers put up and pots leant. */
  readonly shields: number;
  /** In trips of 10 kg over level ground. */
  readonly trips: number;
  readonly carriedKg: number;
  /** Harm and trouble by half month of the year, for the course over the season. */
  readonly costByHalfMonth: number[];
}

/** Harm and trouble together: what a policy is judged by. */
export function costOf({ harm, trouble }: Pick<PotSeason, "harm" | "trouble">): number {
  return harm + trouble;
}

export function emptyHarm(): Float64Array {
  return new Float64Array(HARM_TERMS.length);
}
