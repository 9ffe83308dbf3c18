import { type Kysely, sql } from "kysely";
import type { Plan } from "../../core/plan/plan.ts";
import type { ToldPlan } from "../../core/plan/score/told-plan.ts";
import type { PlanKind, Tables } from "./tables.ts";

export interface StoredPlan {
  readonly id: number;
  readonly kind: PlanKind;
  readonly madeUtcMs: number;
  /** Made after its hour had passed, since the service was down then. */
  readonly late: boolean;
  readonly weatherPullId: number | null;
  readonly plan: Plan;
}

export interface PlansStore {
  /**
   * Keeps the plan; returns its number, or null where that day's morning is there already. The plan comes from core, so
   * its shape is not checked again: a morning must not be lost to a check.
   */
  save(
    plan: Plan,
    how: { kind: PlanKind; madeUtcMs: number; late?: boolean; weatherPullId?: number },
  ): Promise<number | null>;
  latest(siteId: string): Promise<Plan | null>;
  latestStored(siteId: string, kinds?: readonly PlanKind[]): Promise<StoredPlan | null>;
  /** The plan that was made at that instant; null where there is none, or it has been let go of. */
  madeAt(siteId: string, madeUtcMs: number): Promise<Plan | null>;
  /** Newest first. */
  list(siteId: string, limit?: number): Promise<StoredPlan[]>;
  get(planId: number): Promise<StoredPlan | null>;
  /** The day's last plan of those that were told: the morning or its amendment; null where none is kept. */
  toldOn(siteId: string, forDay: string): Promise<StoredPlan | null>;
  /** What the mornings of some days told, oldest first, of the pots named only: for scoring them. */
  told(
    siteId: string,
    of: { fromDay: string; beforeDay: string; potIds: ReadonlySet<string> },
  ): Promise<ToldPlan[]>;
  /** When and how the morning of a day was made; null where there is none. */
  morningOf(siteId: string, forDay: string): Promise<{ madeUtcMs: number; late: boolean } | null>;
  /** The newest local days that have their morning. */
  morningDays(siteId: string): Promise<string[]>;
}

/** Enough to find today's, however far a clock was wrong for a while. Chosen by us. */
const MORNING_DAYS = 400;

export function plansStore(db: Kysely<Tables>): PlansStore {
  const newest = (siteId: string) =>
    db.selectFrom("plan").selectAll().where("site_id", "=", siteId).orderBy("id", "desc");
  return {
    async save(plan, { kind, madeUtcMs, late = false, weatherPullId }) {
      const row = await db
        .insertInto("plan")
        .values({
          site_id: plan.siteId,
          for_day: plan.forDay,
          kind,
          made_utc_ms: madeUtcMs,
          late: late ? 1 : 0,
          weather_pull_id: weatherPullId ?? null,
          document: JSON.stringify(plan),
        })
        .onConflict((clash) => clash.doNothing())
        .returning("id")
        .executeTakeFirst();
      return row?.id ?? null;
    },
    async latest(siteId) {
      const row = await newest(siteId).limit(1).executeTakeFirst();
      return row ? storedPlan(row).plan : null;
    },
    async latestStored(siteId, kinds) {
      const query = newest(siteId).limit(1);
      const row = await (kinds ? query.where("kind", "in", kinds) : query).executeTakeFirst();
      return row ? storedPlan(row) : null;
    },
    async madeAt(siteId, madeUtcMs) {
      const row = await newest(siteId).where("made_utc_ms", "=", madeUtcMs).limit(1).executeTakeFirst();
      return row ? storedPlan(row).plan : null;
    },
    async list(siteId, limit = 100) {
      return (await newest(siteId).limit(limit).execute()).map(storedPlan);
    },
    async get(planId) {
      const row = await db.selectFrom("plan").selectAll().where("id", "=", planId).executeTakeFirst();
      return row ? storedPlan(row) : null;
    },
    async toldOn(siteId, forDay) {
      const row = await newest(siteId)
        .where("for_day", "=", forDay)
        .where("kind", "in", ["morning", "amendment"])
        .limit(1)
        .executeTakeFirst();
      return row ? storedPlan(row) : null;
    },
    async told(siteId, { fromDay, beforeDay, potIds }) {
      const rows = await db
        .selectFrom("plan")
        .select("id")
        .where("site_id", "=", siteId)
        .where("for_day", ">=", fromDay)
        .where("for_day", "<", beforeDay)
        // Written out, so that the index of mornings is used.
        .where("kind", "=", sql.lit("morning"))
        .orderBy("for_day")
        .execute();
      const told: ToldPlan[] = [];
      // One at a time: a plan of ten thousand pots is large, and little of it is kept.
      for (const { id } of rows) {
        const { document } = await db
          .selectFrom("plan")
          .select("document")
          .where("id", "=", id)
          .executeTakeFirstOrThrow();
        told.push(toldOf(JSON.parse(document), potIds));
      }
      return told;
    },
    async morningOf(siteId, forDay) {
      const row = await db
        .selectFrom("plan")
        .select(["made_utc_ms", "late"])
        .where("site_id", "=", siteId)
        .where("for_day", "=", forDay)
        // Written out, so that the index of mornings is used.
        .where("kind", "=", sql.lit("morning"))
        .executeTakeFirst();
      return row ? { madeUtcMs: row.made_utc_ms, late: row.late === 1 } : null;
    },
    async morningDays(siteId) {
      const rows = await db
        .selectFrom("plan")
        .select("for_day")
        .where("site_id", "=", siteId)
        // Written out, so that the index of mornings is used.
        .where("kind", "=", sql.lit("morning"))
        .orderBy("for_day", "desc")
        .limit(MORNING_DAYS)
        .execute();
      return rows.map((row) => row.for_day);
    },
  };
}

function toldOf({ issuedAt, forDay, zone, days, pots }: Plan, potIds: ReadonlySet<string>): ToldPlan {
  const asked = pots.filter(({ potId }) => potIds.has(potId));
  return {
    issuedAt,
    forDay,
    zone,
    days,
    pots: asked.map(({ potId, outlook: { reachesRefillShareFrac } }) => ({
      potId,
      outlook: { reachesRefillShareFrac },
    })),
  };
}

function storedPlan(row: {
  id: number;
  kind: PlanKind;
  made_utc_ms: number;
  late: number;
  weather_pull_id: number | null;
  document: string;
}): StoredPlan {
  return {
    id: row.id,
    kind: row.kind,
    madeUtcMs: row.made_utc_ms,
    late: row.late === 1,
    weatherPullId: row.weather_pull_id,
    plan: JSON.parse(row.document),
  };
}
