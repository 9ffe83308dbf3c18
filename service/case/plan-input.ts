export type { PlanInput } from "../../core/plan/make-plan.ts";
