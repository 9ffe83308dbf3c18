/** Bands of the United States National Weather Service, "none" below them. */
export type HeatBand = "none" | "caution" | "extreme-caution" | "danger" | "extreme-danger";

/** The way to a heat index, °F; no regression where the simple form stays below 80 °F. */
export interface HeatIndexParts {
  readonly tempF: number;
  readonly simpleF: number;
  readonly regressionF: number | null;
  readonly adjustmentF: number;
}

/**
 * Heat index in the shade, °C: how warm the air feels to a person. [NWS2014; regression of ROTHFUSZ1990]
 * @param rhFrac 0 to 1
 * @throws RangeError for a humidity outside 0 to 1 or a temperature that is no number
 */
export function heatIndexC(tempC: number, rhFrac: number): number {
  const parts = heatIndexParts(tempC, rhFrac);
  const indexF = parts.regressionF === null ? parts.simpleF : parts.regressionF + parts.adjustmentF;
  return (indexF - 32) / 1.8;
}

/** The simple form averaged with the temperature; from 80 °F on the regression with both adjustments. [NWS2014] */
export function heatIndexParts(tempC: number, rhFrac: number): HeatIndexParts {
  if (!Number.isFinite(tempC) || !(rhFrac >= 0 && rhFrac <= 1)) {
    throw new RangeError(
      `heat index needs a temperature and a humidity of 0 to 1, not ${tempC} °C, ${rhFrac}`,
    );
  }
  const tempF = tempC * 1.8 + 32;
  const rhPercent = rhFrac * 100;
  const simpleF = (0.5 * (tempF + 61 + (tempF - 68) * 1.2 + rhPercent * 0.094) + tempF) / 2;
  if (simpleF < 80) return { tempF, simpleF, regressionF: null, adjustmentF: 0 };
  return {
    tempF,
    simpleF,
    regressionF: regressionF(tempF, rhPercent),
    adjustmentF: adjustmentF({ tempF, rhPercent }),
  };
}

/** The band a heat index falls in; the limits are whole °F: 80, 90, 103, 125. [NWS2014] */
export function heatBand(indexC: number): HeatBand {
  const indexF = indexC * 1.8 + 32;
  if (indexF < 80) return "none";
  if (indexF < 90) return "caution";
  if (indexF < 103) return "extreme-caution";
  return indexF < 125 ? "danger" : "extreme-danger";
}

/** [ROTHFUSZ1990] */
function regressionF(t: number, r: number): number {
  return (
    -42.379 +
    2.04901523 * t +
    10.14333127 * r -
    0.22475541 * t * r -
    0.00683783 * t * t -
    0.05481717 * r * r +
    0.00122874 * t * t * r +
    0.00085282 * t * r * r -
    0.00000199 * t * t * r * r
  );
}

/** Taken off in dry heat, put on in damp warmth. [NWS2014] */
function adjustmentF({ tempF, rhPercent }: { tempF: number; rhPercent: number }): number {
  if (rhPercent < 13 && tempF >= 80 && tempF <= 112) {
    return -((13 - rhPercent) / 4) * Math.sqrt((17 - Math.abs(tempF - 95)) / 17);
  }
  if (rhPercent > 85 && tempF >= 80 && tempF <= 87) return ((rhPercent - 85) / 10) * ((87 - tempF) / 5);
  return 0;
}
