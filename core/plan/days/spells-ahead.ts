import { instantOf } from "../../site/instant.ts";
import { gustSpells } from "../../weather/gust-spells.ts";
import { rainSpells } from "../../weather/rain-spells.ts";
import type { HourRun } from "../../weather/spells.ts";
import { coldSpells, hotSpells } from "../../weather/temperature-spells.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import { heatLimitC, tipMPerS } from "../harm/spot-harm.ts";
import type { SkySpell } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { roundTo } from "../rows/round-to.ts";

/** Share of the courses from which a spell is named. Chosen by us: what is rarer is told by the day's chance. */
const NAMED_SHARE = 0.5;
/** Wet spells of less, in the middle of the courses, are a shower of their day and no spell. Chosen by us. */
const SPELL_MM = 2;

/**
 * Spells of the hours ahead over the open site, earliest first: likely rain; and cold, heat and gusts beyond the line
 * at which the first of the pots suffers.
 */
export function spellsAhead(context: PlanContext, studies: readonly PotStudy[]): SkySpell[] {
  const { ahead } = context.ready;
  const limits = limitsOf(studies);
  const found = [
    ...rainSpells(ahead)
      .filter(({ rainMm }) => rainMm.mid >= SPELL_MM)
      .map(({ rainMm, peakMmPerH, ...run }) =>
        spell(context, "wet", run, {
          lowMm: roundTo(rainMm.low, 0.1),
          highMm: roundTo(rainMm.high, 0.1),
          peakMmPerH: roundTo(peakMmPerH.high, 0.1),
        }),
      ),
    ...coldSpells(ahead, limits.coldC).map(({ extremeC, ...run }) =>
      spell(context, "cold", run, { extremeC: roundTo(extremeC.mid, 0.1), limitC: limits.coldC }),
    ),
    ...hotSpells(ahead, limits.hotC).map(({ extremeC, ...run }) =>
      spell(context, "hot", run, { extremeC: roundTo(extremeC.mid, 0.1), limitC: limits.hotC }),
    ),
    ...gustSpells(ahead.gustMPerS, limits.gustMPerS).map(({ strongestMPerS, ...run }) =>
      spell(
        context,
        "gusts",
        { ...run, shareFrac: 1 },
        { gustMPerS: roundTo(strongestMPerS, 0.1), limitMPerS: roundTo(limits.gustMPerS, 0.1) },
      ),
    ),
  ];
  return found
    .filter(({ shareFrac }) => shareFrac >= NAMED_SHARE)
    .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
}

function spell(
  { startUtcMs, hourCount }: PlanContext,
  kind: SkySpell["kind"],
  run: HourRun & { shareFrac: number },
  numbers: SkySpell["numbers"],
): SkySpell {
  return {
    kind,
    from: instantOf(startUtcMs + run.fromHour * HOUR_MS),
    ...(run.toHour < hourCount ? { to: instantOf(startUtcMs + run.toHour * HOUR_MS) } : {}),
    shareFrac: roundTo(run.shareFrac, 0.01),
    numbers,
  };
}

/** The lines at which the first of the pots suffers; without pots none is ever passed. */
function limitsOf(studies: readonly PotStudy[]): { coldC: number; hotC: number; gustMPerS: number } {
  let coldC = Number.NEGATIVE_INFINITY;
  let hotC = Number.POSITIVE_INFINITY;
  let gustMPerS = Number.POSITIVE_INFINITY;
  for (const { now, stander } of studies) {
    coldC = Math.max(coldC, now.values.damageC);
    hotC = Math.min(hotC, heatLimitC(stander));
    gustMPerS = Math.min(gustMPerS, tipMPerS(stander));
  }
  return { coldC, hotC, gustMPerS };
}
