/** Where the weather comes from. Every address is a whole base such as "https://api.open-meteo.com". */
export interface FeedSettings {
  readonly forecastUrl: string;
  readonly ensembleUrl: string;
  readonly geocodingUrl: string;
  readonly elevationUrl: string;
  readonly fallbackUrl: string;
  /** Past years, and what forecasts of past days had said; only replays ask for them. */
  readonly archiveUrl: string;
  readonly previousRunsUrl: string;
  /** For the paid hosts of the primary feed; travels in a header, never in an address. */
  readonly apiKey?: string;
  /** Mail or site of whoever runs this house; the fallback refuses callers that do not name one. */
  readonly contact?: string;
  /** For each of: connecting, waiting for headers, waiting for the next piece of the body. */
  readonly timeoutMs: number;
  /** Longest body that is read, counted after decompression. */
  readonly maxBodyBytes: number;
  /** Name of the ensemble model; it must offer shortwave radiation. */
  readonly ensembleModel: string;
  /** Calls a UTC day to one host beyond which none is made, whatever asks; DAILY_CALL_CAP when left out. */
  readonly dailyCallCap?: number;
  /** Marks the weather as invented. */
  readonly demo?: boolean;
}

export const DEFAULT_FEED_SETTINGS: FeedSettings = {
  forecastUrl: "https://api.open-meteo.com",
  ensembleUrl: "https://ensemble-api.open-meteo.com",
  geocodingUrl: "https://geocoding-api.open-meteo.com",
  elevationUrl: "https://api.open-meteo.com",
  fallbackUrl: "https://api.met.no",
  archiveUrl: "https://archive-api.open-meteo.com",
  previousRunsUrl: "https://previous-runs-api.open-meteo.com",
  timeoutMs: 10_000,
  maxBodyBytes: 8 * 1024 * 1024,
  ensembleModel: "ecmwf_ifs025_ensemble",
};
