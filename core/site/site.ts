/** The place whose forecast is asked for. One site, one zone, many spots. */
export interface Site {
  readonly id: string;
  readonly name: string;
  /** -90 to 90, north positive. */
  readonly latDeg: number;
  /** -180 to 180, east positive. */
  readonly lonDeg: number;
  readonly elevationM: number;
  /** IANA name, e.g. "Asia/Kolkata". Local days are cut with its rules. */
  readonly zone: string;
}

/** YYYY-MM-DD in the site's zone. */
export type CalendarDay = string & { readonly __brand: "CalendarDay" };
