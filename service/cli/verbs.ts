import { calc } from "./calc.ts";
import { schema } from "./schema.ts";
import type { Verb } from "./verb.ts";

/** In the order of the help. */
export const VERBS: readonly Verb[] = [calc, schema];
