import type { SpotForcing } from "../../site/forcing.ts";
import { forcingAtSpot } from "../../site/forcing-at-spot.ts";
import type { Site } from "../../site/site.ts";
import type { Spot } from "../../site/spot.ts";
import type { HoursReady } from "../../weather/hours-ready.ts";
import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import { REPLAY_STREAM } from "../hours/streams.ts";

/** How far spots are from what their grower entered. Chosen by us. */
const SD = { sun: 0.15, wind: 0.25, sky: 0.1, rain: 0.1, warmthC: 0.7 } as const;
/** Rain that reaches pots under a roof more than was entered, most. */
const ROOF_LEAK_FRAC = 0.08;

/** The weather as it truly is at each spot, in the order of the spots: shares are off by what nobody has measured. */
export function trueSpots(
  spots: readonly Spot[],
  of: { hours: HoursReady; site: Site; seed: number },
): SpotForcing[] {
  return spots.map((spot, i) => {
    const random = seededRandom(seedFrom([of.seed, REPLAY_STREAM.world, 1000 + i]));
    return forcingAtSpot(of.hours, of.site, trueSpot(spot, random));
  });
}

function trueSpot(spot: Spot, random: { normal(): number; uniform(): number }): Spot {
  const share = (frac: number, sd: number) => Math.min(1, frac * Math.exp(sd * random.normal()));
  const skyFrac = share(spot.skyFrac, SD.sky);
  const sunFrac = share(spot.sunFrac, SD.sun);
  const windFrac = share(spot.windFrac, SD.wind);
  const warmer = SD.warmthC * random.normal();
  const leak = ROOF_LEAK_FRAC * random.uniform();
  return {
    ...spot,
    skyFrac,
    sunFrac,
    windFrac,
    rainFrac: spot.kind === "open" ? share(spot.rainFrac, SD.rain) : Math.min(1, spot.rainFrac + leak),
    nightWarmthC: spot.nightWarmthC + (spot.kind === "indoors" ? 0 : warmer),
    ...(spot.heatedToC === undefined ? {} : { heatedToC: spot.heatedToC + warmer }),
  };
}
