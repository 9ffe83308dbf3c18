import type { JobParts } from "./job-parts.ts";
import type { MakePlanInput } from "./make-plan-now.ts";

/** The parts that planning needs. */
export function planTools(parts: JobParts): Pick<MakePlanInput, "store" | "feed" | "fetchWeather" | "plan"> {
  const { store, feed, fetchWeather, plan } = parts;
  return { store, feed, fetchWeather, ...(plan ? { plan } : {}) };
}
