/** The grower's measures: metric throughout, or those usual in the United States. */
export type Units = "metric" | "us";

/** A number as written, apart from its unit, so that a page can set the unit smaller. */
export interface Figure {
  readonly number: string;
  readonly unit: string;
  /** What stands between the two in running text. */
  readonly gap: string;
}
