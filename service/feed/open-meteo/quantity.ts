export type Quantity =
  | "tempC"
  | "frac"
  | "rainMm"
  | "et0Mm"
  | "windMPerS"
  | "radiationMjPerM2"
  | "vpdKPa"
  | "code";

interface Unit {
  readonly factor: number;
  /** Taken off before the factor is applied. */
  readonly zeroAt?: number;
}

/** Every unit string that the feed documents for a quantity, as the way into ours. Factors are definitions. */
const UNITS: Readonly<Record<Quantity, Readonly<Record<string, Unit>>>> = {
  tempC: { "°C": { factor: 1 }, "°F": { factor: 1 / 1.8, zeroAt: 32 } },
  frac: { "%": { factor: 0.01 } },
  rainMm: { mm: { factor: 1 }, inch: { factor: 25.4 } },
  et0Mm: { mm: { factor: 1 }, inch: { factor: 25.4 } },
  windMPerS: {
    "m/s": { factor: 1 },
    "km/h": { factor: 1 / 3.6 },
    "mp/h": { factor: 0.44704 },
    kn: { factor: 1852 / 3600 },
  },
  // The mean of the hour in W/m2, times 3600 s.
  radiationMjPerM2: { "W/m²": { factor: 0.0036 } },
  vpdKPa: { kPa: { factor: 1 } },
  code: { "wmo code": { factor: 1 } },
};

/**
 * What can be, in our units; outside it a value is a fault and not weather. Chosen by us some way beyond the world
 * records kept by the WMO (air -89.2 and 56.7 °C, gust 113 m/s, about 400 mm of rain in an hour; from memory).
 * `slack` is how far below the least a value still counts as the least: models print -0.1 for no sun.
 */
const LIMITS: Readonly<Record<Quantity, { least: number; most: number; slack: number }>> = {
  tempC: { least: -95, most: 62, slack: 0 },
  frac: { least: 0, most: 1, slack: 0 },
  rainMm: { least: 0, most: 450, slack: 0.01 },
  et0Mm: { least: 0, most: 3, slack: 0.1 },
  windMPerS: { least: 0, most: 130, slack: 0 },
  radiationMjPerM2: { least: 0, most: 5.4, slack: 0.04 },
  vpdKPa: { least: 0, most: 20, slack: 0.01 },
  code: { least: 0, most: 99, slack: 0 },
};

/** Into our unit; null when the feed does not document the unit for the quantity. */
export function toOurUnit(quantity: Quantity, unit: string): ((value: number) => number) | null {
  const known = Object.hasOwn(UNITS[quantity], unit) ? UNITS[quantity][unit] : undefined;
  if (known === undefined) return null;
  const { factor, zeroAt = 0 } = known;
  // Adding zero turns -0 into 0.
  return (value) => (value - zeroAt) * factor + 0;
}

/** The value, its nearest limit when it is out by rounding only, or NaN when it cannot be. */
export function possible(quantity: Quantity, value: number): number {
  const { least, most, slack } = LIMITS[quantity];
  if (value > most || value < least - slack) return Number.NaN;
  return Math.max(value, least);
}
