import { deflateRawSync, inflateRawSync } from "node:zlib";
import type { Kysely } from "kysely";
import { z } from "zod";
import type { Collection } from "../../core/plan/collection.ts";
import type { Settings } from "../../core/plan/settings.ts";
import { CollectionSchema } from "../case/collection-schema.ts";
import { SettingsSchema } from "../case/settings-schema.ts";
import { VERSION } from "../version.ts";
import { readDocument } from "./documents.ts";
import type { Tables } from "./tables.ts";

/** What a plan was made from besides its weather, which stands at the plan itself. */
export interface PlanBasis {
  readonly collection: Collection;
  readonly settings: Settings;
  /** The last journal entry that it knew, by the order of arrival. */
  readonly journalSeq: number;
  /** The plan against which changes were told. */
  readonly previousPlanId: number | null;
}

export interface PlanInputsStore {
  save(planId: number, basis: PlanBasis): Promise<void>;
  /** Null for a plan older than this memory. `program` is the version that made it. */
  get(planId: number): Promise<(PlanBasis & { readonly program: string }) | null>;
}

const Body = z.object({ collection: CollectionSchema, settings: SettingsSchema });

export function planInputsStore(db: Kysely<Tables>): PlanInputsStore {
  return {
    async save(planId, { collection, settings, journalSeq, previousPlanId }) {
      await db
        .insertInto("plan_input")
        .values({
          plan_id: planId,
          program: VERSION,
          journal_seq: journalSeq,
          previous_plan_id: previousPlanId,
          body: deflateRawSync(JSON.stringify({ collection, settings })),
        })
        .execute();
    },
    async get(planId) {
      const row = await db
        .selectFrom("plan_input")
        .selectAll()
        .where("plan_id", "=", planId)
        .executeTakeFirst();
      if (!row) return null;
      const { collection, settings } = readDocument(
        Body,
        inflateRawSync(row.body).toString("utf8"),
        `plan_input ${planId}`,
      );
      const { program, journal_seq: journalSeq, previous_plan_id: previousPlanId } = row;
      return { collection: collection as Collection, settings, program, journalSeq, previousPlanId };
    },
  };
}
