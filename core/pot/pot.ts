import type { RootWork } from "../journal/entry.ts";
import type { GroupId, GroupValues } from "../plant/group.ts";
import type { SpotId } from "../site/spot.ts";

export type PotId = string;

/**
 * A pot as the grower names it. What it is planted in, where it stands and how wet it is are not stored here:
 * they follow from the journal.
 */
export interface Pot {
  readonly id: PotId;
  readonly name: string;
  readonly groupId: GroupId;
  /** How many alike stand here and are handled as one; 1 when left out. */
  readonly count?: number;
  /** Canopy seen from above. */
  readonly canopyWidthCm: number;
  /** Plant above the rim. */
  readonly plantHeightCm: number;
  /** The grower's own values in place of the group's. */
  readonly own?: Partial<GroupValues>;
  /** The grower's own days of keeping dry at 20 °C after root work, in place of the house rule. */
  readonly dryDays?: Partial<Record<RootWork, number>>;
  /** Where it stood when it was entered; `moved` entries change it. */
  readonly firstSpotId: SpotId;
}
