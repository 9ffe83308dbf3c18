import type { Calibration } from "../../core/plan/score/calibration.ts";
import type { Naming } from "./naming.ts";

/** How far what was told before came true, a sentence each for rain and for pots; nothing while too little is known. */
export function keptLines(kept: Calibration | undefined, { words }: Naming): string[] {
  const rain = kept?.rain.telling;
  const dry = kept?.dry.telling;
  return [
    ...(rain
      ? [
          words.say("trust.kept-rain", {
            toldShareFrac: rain.toldFrac,
            cameFrac: rain.cameTrueFrac,
            dayCount: rain.count,
          }),
        ]
      : []),
    ...(dry
      ? [
          words.say("trust.kept-dry", {
            toldShareFrac: dry.toldFrac,
            cameFrac: dry.cameTrueFrac,
            potCount: dry.count,
          }),
        ]
      : []),
  ];
}
