import type { Kysely } from "kysely";
import { m0001First } from "./m0001-first.ts";
import { m0002People } from "./m0002-people.ts";
import { m0003Photos } from "./m0003-photos.ts";
import { m0004Access } from "./m0004-access.ts";
import { m0005PlanInputs } from "./m0005-plan-inputs.ts";

export type Step = (db: Kysely<unknown>) => Promise<void>;

/** Step n brings a store from version n to n + 1. Steps are added at the end and never changed. */
export const STEPS: readonly Step[] = [m0001First, m0002People, m0003Photos, m0004Access, m0005PlanInputs];
