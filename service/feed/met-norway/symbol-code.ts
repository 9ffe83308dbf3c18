/** Codes of WMO table 4677 by the feed's symbol, without its day or night part. Thunder is told apart beforehand. */
const CODE_OF_SYMBOL: Readonly<Record<string, number>> = {
  clearsky: 0,
  fair: 1,
  partlycloudy: 2,
  cloudy: 3,
  fog: 45,
  lightrain: 61,
  rain: 63,
  heavyrain: 65,
  lightsleet: 68,
  sleet: 69,
  heavysleet: 69,
  lightsnow: 71,
  snow: 73,
  heavysnow: 75,
  lightrainshowers: 80,
  rainshowers: 81,
  heavyrainshowers: 82,
  lightsleetshowers: 83,
  sleetshowers: 84,
  heavysleetshowers: 84,
  lightsnowshowers: 85,
  snowshowers: 86,
  heavysnowshowers: 86,
};
const THUNDERSTORM = 95;

/** WMO code of a symbol such as "lightrainshowers_day"; NaN for one that is not known. */
export function weatherCodeOfSymbol(symbol: string | undefined): number {
  if (symbol === undefined) return Number.NaN;
  if (symbol.includes("thunder")) return THUNDERSTORM;
  return CODE_OF_SYMBOL[symbol.replace(/_.*$/, "")] ?? Number.NaN;
}
