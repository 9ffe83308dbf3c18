import type { RootWork } from "../journal/entry.ts";

/** The grower's choices that bear on advice. */
export interface Settings {
  /** Same seed and inputs, same plan, byte for byte. */
  readonly seed: number;
  /** Possible versions of each pot, each paired with one course of weather. */
  readonly cloudSize: number;
  /** Whole days ahead that are reckoned with, 1 to 14. */
  readonly horizonDays: number;
  /** Harm, in thousandths of a plant, that one carry of a 10 kg pot over level ground must save to be worth it. */
  readonly tripWorth: number;
  /** No carrying before / after these local hours. */
  readonly dayStartsHour: number;
  readonly dayEndsHour: number;
  /** House rule: days of keeping dry by root work at 20 °C, in place of the library's. */
  readonly dryDays?: Partial<Record<RootWork, number>>;
  /** Most carries that fit in before the day's own work; no limit when left out. */
  readonly tripsBeforeWork?: number;
  /** Kilograms one person lifts without asking; the lifting equation may lower it, never raise it. */
  readonly liftLimitKg?: number;
}

export const DEFAULT_SETTINGS: Settings = {
  seed: 1,
  cloudSize: 51,
  horizonDays: 7,
  tripWorth: 4,
  dayStartsHour: 6,
  dayEndsHour: 20,
};
