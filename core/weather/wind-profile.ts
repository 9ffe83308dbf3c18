/**
 * Wind at 2 m over short grass from wind at another height, m/s. [FAO56 eq. 47]
 * The formula is used at 2 m as well, where its factor is 1.0002.
 * @throws RangeError when the height is too low for the logarithm (0.1 m and less)
 */
export function windAt2mMPerS(wind: { windMPerS: number; heightM: number }): number {
  return wind.windMPerS * windFactorTo2m(wind.heightM);
}

/** Wind at 2 m as a share of the wind at a height. [FAO56 eq. 47] */
export function windFactorTo2m(heightM: number): number {
  const inside = 67.8 * heightM - 5.42;
  if (!(inside > 1)) throw new RangeError(`wind height ${heightM} m is too low; 0.1 m or more is needed`);
  return 4.87 / Math.log(inside);
}
