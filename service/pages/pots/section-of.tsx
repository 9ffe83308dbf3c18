import { moistureProfile } from "../../../core/pot/profile.ts";
import type { Words } from "../../words/words.ts";
import { airlessToCm } from "../drawing/hatch-heights.ts";
import { PotSection } from "../drawing/pot-section.tsx";
import { type PotStand, waterMlNow } from "./pot-stand.ts";

/** The three sizes of the drawing: on a shelf, on a card, on the pot's own page. */
const SIZES = {
  shelf: { pxPerCm: 2.6, lineMm: 6, mostAboveCm: 30 },
  page: { pxPerCm: 6, lineMm: 3, mostAboveCm: 35 },
} as const;

/** A pot's own section with its water as reckoned; nothing until a planting has been logged. */
export function SectionOf({
  stand,
  size,
  words,
}: {
  stand: PotStand;
  size: keyof typeof SIZES;
  words: Words;
}) {
  const { planted, inVessel, pot, potPlan } = stand;
  if (!planted) return null;
  const { vessel } = planted.body;
  const waterMl = waterMlNow(stand);
  const profile =
    inVessel && waterMl !== null ? moistureProfile({ retention: inVessel.retention, vessel, waterMl }) : null;
  const outlook = potPlan?.outlook;
  return (
    <PotSection
      vessel={vessel}
      profile={profile}
      {...SIZES[size]}
      plant={{ widthCm: pot.canopyWidthCm, heightCm: pot.plantHeightCm }}
      {...(outlook && size === "page"
        ? {
            marks: {
              nowFrac: outlook.nowFrac.mid,
              refillFrac: outlook.refillFrac,
              ...(outlook.byDayFrac[1] ? { tomorrowFrac: outlook.byDayFrac[1].mid } : {}),
            },
          }
        : {})}
      label={sectionText({ stand, words, airlessCm: profile ? airlessToCm(profile) : 0 })}
    />
  );
}

/** The drawing in one sentence. */
export function sectionText(input: { stand: PotStand; words: Words; airlessCm: number }): string {
  const { stand, words, airlessCm } = input;
  const waterMl = waterMlNow(stand);
  const pot = stand.pot.name;
  if (waterMl === null || !stand.potPlan) return words.say("section.unknown", { pot });
  const { capacityMl, nowFrac } = stand.potPlan.outlook;
  const held = words.say("section.holds", { pot, waterMl, capacityMl, nowFrac: nowFrac.mid });
  return airlessCm < 0.5 ? held : `${held} ${words.say("section.airless", { airlessCm })}`;
}
