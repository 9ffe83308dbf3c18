/** Upper end of light and of moderate rain, mm in an hour. [AMSRAIN] */
const LIGHT_TO_MM_PER_H = 2.5;
const MODERATE_TO_MM_PER_H = 7.6;

/** The word for a rate of rain. [AMSRAIN] */
export function rainRate(rainMmPerH: number): "light" | "moderate" | "heavy" {
  if (rainMmPerH <= LIGHT_TO_MM_PER_H) return "light";
  return rainMmPerH <= MODERATE_TO_MM_PER_H ? "moderate" : "heavy";
}
