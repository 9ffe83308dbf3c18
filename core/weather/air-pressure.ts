/** Mean air pressure at a height above the sea, kPa. [FAO56 eq. 7] */
export function airPressureKPa(elevationM: number): number {
  return 101.3 * ((293 - 0.0065 * elevationM) / 293) ** 5.26;
}

/** Psychrometric constant, kPa/°C. [FAO56 eq. 8] */
export function psychrometricKPaPerC(pressureKPa: number): number {
  return 0.665e-3 * pressureKPa;
}
