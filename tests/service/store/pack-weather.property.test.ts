import fc from "fast-check";
import { expect, it } from "vitest";
import { packWeather, unpackWeather } from "../../../service/store/pack-weather.ts";
import { someWeather } from "./some-weather.ts";

it("weather comes out of the store bit for bit", () => {
  const sizes = fc.record({
    hourCount: fc.integer({ min: 0, max: 30 }),
    memberCount: fc.integer({ min: 0, max: 4 }),
  });
  const numbers = fc.array(fc.double(), { minLength: 1, maxLength: 50 });
  fc.assert(
    fc.property(sizes, numbers, (size, values) => {
      let next = 0;
      const weather = someWeather({ ...size, value: () => values[next++ % values.length]! });
      expect(unpackWeather(packWeather(weather))).toEqual(weather);
    }),
  );
});

it("a body that does not fit its row is refused", () => {
  const packed = packWeather(someWeather({ hourCount: 3 }));
  expect(() => unpackWeather({ ...packed, hourCount: 4 })).toThrow(RangeError);
});
