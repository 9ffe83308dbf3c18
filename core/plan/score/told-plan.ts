import type { PotId } from "../../pot/pot.ts";
import type { Plan } from "../plan.ts";
import type { PotOutlook } from "../pot-plan.ts";

/** As much of a past plan as is scored; pots that nobody felt since may be left out. */
export interface ToldPlan extends Pick<Plan, "issuedAt" | "forDay" | "zone" | "days"> {
  readonly pots: readonly {
    readonly potId: PotId;
    readonly outlook: Pick<PotOutlook, "reachesRefillShareFrac">;
  }[];
}
