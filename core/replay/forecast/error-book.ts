import { REPLAY_STREAM } from "../hours/streams.ts";
import { type ErrorProcess, errorProcess } from "./error-process.ts";
import type { RainScores } from "./rain-scores.ts";

/** All error processes of one seed: of the single run, and what the ensemble's centre has of its own. */
export interface ErrorBook {
  readonly latDeg: number;
  readonly rain: RainScores;
  readonly run: Processes;
  readonly ensemble: Processes;
}

export type Quantity = "max" | "min" | "dew" | "wind" | "sun" | "rain" | "shift";
type Processes = Readonly<Record<Quantity, ErrorProcess>>;

const STREAMS: Readonly<Record<Quantity, number>> = {
  max: REPLAY_STREAM.forecastMax,
  min: REPLAY_STREAM.forecastMin,
  dew: REPLAY_STREAM.forecastDew,
  wind: REPLAY_STREAM.forecastWind,
  sun: REPLAY_STREAM.forecastSun,
  rain: REPLAY_STREAM.forecastRain,
  shift: REPLAY_STREAM.forecastShape,
};
const ENSEMBLE_STREAMS = 1000;

export function errorBook(of: {
  seed: number;
  firstDayNumber: number;
  dayCount: number;
  latDeg: number;
  rain: RainScores;
}): ErrorBook {
  const processes = (offset: number) =>
    Object.fromEntries(
      Object.entries(STREAMS).map(([name, stream]) => [
        name,
        errorProcess({ ...of, stream: stream + offset }),
      ]),
    ) as Processes;
  return { latDeg: of.latDeg, rain: of.rain, run: processes(0), ensemble: processes(ENSEMBLE_STREAMS) };
}
