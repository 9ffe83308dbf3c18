/** Which random numbers a stream of the replay is for; none shifts when another is added. */
export const REPLAY_STREAM = {
  dew: 101,
  sun: 102,
  wind: 103,
  rain: 104,
  forecastMax: 111,
  forecastMin: 112,
  forecastRain: 113,
  forecastSun: 114,
  forecastDew: 115,
  forecastWind: 116,
  forecastPlace: 117,
  forecastShape: 118,
  members: 119,
  dryDay: 120,
  world: 131,
  hands: 132,
} as const;
