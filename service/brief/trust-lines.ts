import type { WeatherAge } from "../../core/plan/plan.ts";
import type { Naming } from "./naming.ts";

/** How old the weather is, what stood in for what was missing, and how far ahead could be reckoned. */
export function trustLines(age: WeatherAge, naming: Naming): string[] {
  const { words } = naming;
  return [
    words.say(`trust.${age.trust}`),
    ...(age.source === "fallback" ? [words.say("trust.fallback")] : []),
    words.say("trust.age", { ageHours: Math.round(age.ageHours), time: naming.when(age.fetchedAt) }),
    words.say("trust.members", { memberCount: age.memberCount }),
    words.say("trust.known", { knownDays: Math.floor(age.knownHours / 24) }),
    ...age.standIns.map((standIn) =>
      words.say("trust.stand-in", {
        quantity: words.say(`quantity.${standIn.quantity}`),
        shareFrac: standIn.shareOfHoursFrac,
        method: words.trySay(`method.${standIn.method}`) ?? standIn.method,
      }),
    ),
  ];
}
