import type { SpotDays } from "../days/spot-days.ts";
import type { PlanContext } from "../plan-context.ts";

/** The same spot without a drop of rain, to see what rain does there; made once for each spot of a run. */
export function withoutRain(context: PlanContext, at: SpotDays): SpotDays {
  const known = context.rainless.get(at.spot.id);
  if (known !== undefined) return known;
  const dry: SpotDays = {
    ...at,
    rainMm: new Float64Array(at.rainMm.length),
    forcing: { ...at.forcing, rainMm: new Float64Array(at.forcing.rainMm.length) },
  };
  context.rainless.set(at.spot.id, dry);
  return dry;
}
