import type { PotOutlook } from "../../../core/plan/pot-plan.ts";
import { moistureProfile } from "../../../core/pot/profile.ts";
import type { Words } from "../../words/words.ts";
import type { SectionMark } from "../drawing/beside-section.tsx";
import { airlessToCm } from "../drawing/hatch-heights.ts";
import { PotSection } from "../drawing/pot-section.tsx";
import { sectionSpanCm } from "../drawing/section-frame.ts";
import { type PotStand, waterMlNow } from "./pot-stand.ts";

/** How wide a pot and its plant are drawn at most: with the rod they fill a phone, so that no name beside it is shrunk. */
const WIDEST_PX = 250;

/** How a pot's own page draws it; shelves choose their scale by the widest that stands there. */
export function pageScale({ planted, pot }: PotStand): SectionScale {
  const plant = { widthCm: pot.canopyWidthCm, heightCm: pot.plantHeightCm };
  const spanCm = planted ? sectionSpanCm({ vessel: planted.body.vessel, plant }) : 0;
  return { pxPerCm: Math.min(6, WIDEST_PX / Math.max(1, spanCm)), lineMm: 3, mostAboveCm: 35 };
}

interface SectionScale {
  readonly pxPerCm: number;
  readonly lineMm: number;
  readonly mostAboveCm: number;
}

export interface SectionOfProps {
  readonly stand: PotStand;
  readonly scale: SectionScale;
  /** With the rod that shows now, the refill point and tomorrow. */
  readonly withMarks?: boolean;
  readonly words: Words;
}

/** A pot's own section with its water as reckoned; nothing until a planting has been logged. */
export function SectionOf({ stand, scale, withMarks = false, words }: SectionOfProps) {
  const { planted, inVessel, pot, potPlan } = stand;
  if (!planted) return null;
  const { vessel } = planted.body;
  const waterMl = waterMlNow(stand);
  const profile =
    inVessel && waterMl !== null ? moistureProfile({ retention: inVessel.retention, vessel, waterMl }) : null;
  return (
    <PotSection
      vessel={vessel}
      profile={profile}
      {...scale}
      plant={{ widthCm: pot.canopyWidthCm, heightCm: pot.plantHeightCm }}
      {...(withMarks && potPlan ? { marks: marksOf(potPlan.outlook, words) } : {})}
      label={sectionText({ stand, words, airlessCm: profile ? airlessToCm(profile) : 0 })}
    />
  );
}

function marksOf({ nowFrac, refillFrac, byDayFrac }: PotOutlook, { say }: Words): SectionMark[] {
  const tomorrow = byDayFrac[1];
  return [
    { kind: "now", frac: nowFrac.mid, text: say("section.now") },
    { kind: "refill", frac: refillFrac, text: say("section.waits") },
    ...(tomorrow ? [{ kind: "tomorrow" as const, frac: tomorrow.mid, text: say("section.tomorrow") }] : []),
  ];
}

/** The drawing in one sentence. */
export function sectionText(input: { stand: PotStand; words: Words; airlessCm: number }): string {
  const { stand, words, airlessCm } = input;
  const waterMl = waterMlNow(stand);
  const pot = stand.pot.name;
  if (waterMl === null || !stand.potPlan) return words.say("section.unknown", { pot });
  const { capacityMl } = stand.potPlan.outlook;
  const held = words.say("section.holds", { pot, waterMl, capacityMl });
  return airlessCm < 0.5 ? held : `${held} ${words.say("section.airless", { airlessCm })}`;
}
