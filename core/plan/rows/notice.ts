import { instantOf } from "../../site/instant.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { CarrySpan } from "../choice/carry-hours.ts";
import type { Deed } from "../deed.ts";
import type { PlanContext } from "../plan-context.ts";

/**
 * How far ahead something is told as a thing to do, without a day before which it need not be done. Chosen by us: a
 * storm of tomorrow afternoon belongs in this morning's round.
 */
export const NOTICE_H = 36;

/** The end of a span as instants, and its beginning where it is further off or today's thunder comes before it. */
export function spanOfDeed(
  { startUtcMs, thunder, days }: Pick<PlanContext, "startUtcMs" | "thunder" | "days">,
  { fromHour, byHour }: CarrySpan,
): Pick<Deed, "from" | "by"> {
  const at = (hour: number) => instantOf(startUtcMs + hour * HOUR_MS);
  const afterThunder = days[0]!.workHours.includes(fromHour) && thunder.subarray(0, fromHour).includes(1);
  return { ...(byHour <= NOTICE_H && !afterThunder ? {} : { from: at(fromHour) }), by: at(byHour) };
}
