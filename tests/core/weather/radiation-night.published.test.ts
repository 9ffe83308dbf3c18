import { expect, test } from "vitest";
import { fitRadiationNights, radiationNightMinC } from "../../../core/weather/radiation-night.ts";

// Snyder and de Melo-Abreu (2005), Frost protection: fundamentals, practice and economics, FAO, example of the minimum
// temperature forecast. Inputs and the printed prediction read in a program that carries the paper's example.
const TEMP_C = [3.2, 0.8, 0.2, 2.6, 4.4, 5.2, 2.7, 1.2, 4.5, 5.6];
const DEW_C = [-4.2, -8.8, -6.5, -6.2, -6.1, 2.6, -0.7, -1.7, -1.2, 0.1];
const MIN_C = [-3.1, -5, -6.3, -5.4, -4, -2.5, -4.8, -5, -4.4, -3.3];

test("the published radiation nights give the published prediction", () => {
  const nights = TEMP_C.map((tempC, i) => ({ tempC, dewPointC: DEW_C[i]!, minC: MIN_C[i]! }));
  expect(nights.length).toBe(10);
  const fit = fitRadiationNights(nights)!;
  expect(radiationNightMinC(fit, { tempC: 10, dewPointC: 2 })).toBeCloseTo(-0.7409219, 6);
});

test("too few nights, or nights all alike, tell nothing", () => {
  const night = { tempC: 4, dewPointC: 1, minC: -1 };
  expect(fitRadiationNights([night, { ...night, tempC: 5 }])).toBeNull();
  expect(fitRadiationNights([night, night, night])).toBeNull();
});
