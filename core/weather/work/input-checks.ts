/** Largest and smallest value that a quantity can have anywhere on earth, with a margin. */
const LIMITS: Readonly<Record<string, readonly [number, number]>> = {
  latDeg: [-90, 90],
  lonDeg: [-180, 180],
  elevationM: [-500, 9000],
  dayOfYear: [1, 366],
  hourStartUtc: [0, 24],
  tempMinC: [-90, 60],
  tempMaxC: [-90, 60],
  tempC: [-90, 60],
  dewPointC: [-110, 60],
  windMPerS: [0, 120],
  windHeightM: [0.2, 200],
  radiationMjPerM2: [0, 60],
  cloudRatioFrac: [0, 2],
  rhMaxFrac: [0, 1],
  rhMinFrac: [0, 1],
  rhMeanFrac: [0, 1],
  rhFrac: [0, 1],
};

/**
 * Refuses a value that is no number or cannot be true.
 * @throws RangeError naming the first field, its value and its limits
 */
export function checkInput(input: object): void {
  for (const [name, value] of Object.entries(input)) {
    const limits = LIMITS[name];
    if (!limits || value === undefined) continue;
    if (!(typeof value === "number" && value >= limits[0] && value <= limits[1])) {
      throw new RangeError(`${name} is ${value}; ${limits[0]} to ${limits[1]} can be reckoned with`);
    }
  }
}

/** @throws RangeError when the day's lowest temperature is above its highest */
export function checkDayRange(day: { tempMinC: number; tempMaxC: number }): void {
  checkInput(day);
  if (day.tempMinC > day.tempMaxC) {
    throw new RangeError(`tempMinC ${day.tempMinC} is above tempMaxC ${day.tempMaxC}`);
  }
}
