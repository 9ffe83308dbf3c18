import type { Plan } from "../../core/plan/plan.ts";
import { utcMsOfLocal } from "../../core/site/local-days.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import { type LinkClaims, signedLink } from "./signed-link.ts";

type Answer = Exclude<LinkClaims, { purpose: "stop-mail" }>["purpose"];
export interface DeedOfPlan {
  readonly potId: string;
  readonly action: string;
}

/** Signed paths by which one person answers one plan. */
export interface AnswerLinks {
  /** Path from the root of the house. */
  path(purpose: Answer, deed?: DeedOfPlan): string;
  /** Whole address; null where the house does not know under which name it is reached from outside. */
  address(purpose: Answer, deed?: DeedOfPlan): string | null;
}

const DAY_MS = 86_400_000;
/** A brief can be answered to the end of the day after it. Chosen by us: what was done in the evening is told next day. */
const DAYS_OPEN = 2;

export function answerLinks(of: {
  readonly plan: Plan;
  readonly madeUtcMs: number;
  readonly personId: string;
  readonly key: Buffer;
  /** Without a slash at its end. */
  readonly publicUrl: string | null;
}): AnswerLinks {
  const { plan, madeUtcMs, personId, key, publicUrl } = of;
  const expiresUtcMs = endOfAnswering(plan);
  const path = (purpose: Answer, deed: DeedOfPlan | null = null) =>
    `/answer/${signedLink({ purpose, personId, siteId: plan.siteId, madeUtcMs, deed, expiresUtcMs }, key)}`;
  return {
    path,
    address: (purpose, deed) => (publicUrl === null ? null : `${publicUrl}${path(purpose, deed)}`),
  };
}

function endOfAnswering({ forDay, zone }: Plan): number {
  const last = new Date(Date.parse(`${forDay}T12:00Z`) + DAYS_OPEN * DAY_MS).toISOString().slice(0, 10);
  return utcMsOfLocal(last as CalendarDay, 0, zone);
}
