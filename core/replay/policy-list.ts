import type { Plan } from "../plan/plan.ts";
import type { Settings } from "../plan/settings.ts";
import { type PlannerFeed, plannerPolicy } from "./planner/planner-policy.ts";
import { checkbook } from "./policies/checkbook.ts";
import { finger } from "./policies/finger.ts";
import { fixedDays } from "./policies/fixed-days.ts";
import type { Policy } from "./policies/policy.ts";
import { tradeRules } from "./policies/trade-rules.ts";
import { wetMonths } from "./policies/wet-months.ts";

/** What a policy is made for. */
export interface PolicyMaking {
  readonly feed: PlannerFeed;
  readonly settings: Settings;
  readonly onPlan?: (plan: Plan) => void;
}

export interface PolicyEntry {
  readonly id: string;
  /** In plain terms, for the report. */
  readonly about: string;
  /** What people do, the planner, or the planner with something left out. */
  readonly kind: "people" | "planner" | "ablation";
  make(of: PolicyMaking): Policy;
}

const planner = (id: string, change: Partial<Settings>, parts: { learns: boolean; members: boolean }) => ({
  id,
  make: ({ feed, settings, onPlan }: PolicyMaking) =>
    plannerPolicy({ id, settings: { ...settings, ...change }, ...parts }, feed, onPlan),
});

const WHOLE = { learns: true, members: true };

/** Every way of looking after pots that is held against the others. */
export const POLICIES: readonly PolicyEntry[] = [
  {
    id: "fixed-days",
    kind: "people",
    about: "water on fixed days by season; indoors in the half months whose nights are usually too cold",
    make: () => fixedDays({ skips: false }),
  },
  {
    id: "fixed-days-rain-skip",
    kind: "people",
    about: "the same, but the can is left when 5 mm of rain are forecast for today and tomorrow",
    make: () => fixedDays({ skips: true }),
  },
  {
    id: "dry-to-the-finger",
    kind: "people",
    about: "water when a finger (3 cm, leafy) or a stick (6 cm) finds the mix dry; indoors by the calendar",
    make: () => finger,
  },
  {
    id: "fao56-checkbook",
    kind: "people",
    about:
      "one bucket a pot, charged with yesterday's evapotranspiration; rain in the forecast defers; indoors by the calendar",
    make: () => checkbook,
  },
  {
    id: "under-cover-in-wet-months",
    kind: "people",
    about:
      "under the roof in half months in which more rain falls than evaporates, indoors in the cold; water by the finger",
    make: () => wetMonths,
  },
  {
    id: "trade-rules",
    kind: "people",
    about:
      "lift every pot each morning; not before likely rain, in cold nights or on fresh cuts; in before cold and soaking rain",
    make: () => tradeRules,
  },
  { ...planner("planner", {}, WHOLE), kind: "planner", about: "the plan of each morning, carried out" },
  {
    ...planner("planner-no-learning", {}, { learns: false, members: true }),
    kind: "ablation",
    about: "the same, told of deeds only: no lift, no weighing, no run-off measured",
  },
  {
    ...planner("planner-no-ensemble", {}, { learns: true, members: false }),
    kind: "ablation",
    about: "the same with a feed that sends no ensemble; spread is drawn from published errors",
  },
  {
    ...planner("planner-one-course", { cloudSize: 1 }, WHOLE),
    kind: "ablation",
    about: "the same with one version of each pot and one course of weather",
  },
  {
    ...planner("planner-no-look-ahead", { horizonDays: 1 }, WHOLE),
    kind: "ablation",
    about: "the same with a horizon of one day",
  },
];
