import type { JournalEntry } from "../../../core/journal/entry.ts";
import { settleEntries } from "../../../core/journal/settle-entries.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import { briefOf } from "../../brief/brief.ts";
import type { BriefDeed } from "../../brief/brief-value.ts";
import { HOUSE_PERSON } from "../../notify/post.ts";
import { type LinkClaims, readLink } from "../../notify/signed-link.ts";
import { type Words, wordsFor } from "../../words/words.ts";
import type { PageContext } from "../page-context.ts";
import { doneSince } from "../today/done-deeds.ts";

export type AnswerClaims = Exclude<LinkClaims, { purpose: "stop-mail" }>;

/** A deed that a link answers for, and whether it has been answered already. */
export interface AskedDeed {
  readonly deed: BriefDeed;
  readonly state: "open" | "done" | "not-today";
}

/** What a valid link opens: some deeds of one plan, and nothing else of the house. */
export interface OpenAnswer {
  readonly claims: AnswerClaims;
  readonly plan: Plan;
  readonly deeds: readonly AskedDeed[];
  /** Every id that the journal ever took, undone entries too. */
  readonly takenIds: ReadonlySet<string>;
  /** Of the person whose link it is. */
  readonly words: Words;
}

export type AnswerFault = "link-broken" | "link-expired";

/** Ids of "not today" begin with this and the action. */
export function laterId(action: string, nonce: string): string {
  return `later.${action}.${nonce}`;
}

/** Reads a link and what it is about. A link of a person who is no longer here, or of a plan let go of, is broken. */
export async function openAnswer(context: PageContext, token: string): Promise<OpenAnswer | AnswerFault> {
  const { store, post, now } = context;
  const read = readLink(token, { key: post.signing.key, nowUtcMs: now() });
  if (!read.ok) return read.fault;
  const { claims } = read;
  if (claims.purpose === "stop-mail") return "link-broken";
  const words = await wordsOf(context, claims.personId);
  const plan = await store.plans.madeAt(claims.siteId, claims.madeUtcMs);
  if (words === null || plan === null) return "link-broken";
  const entries = await store.journal.list(claims.siteId);
  const collection = await store.collection(claims.siteId);
  const brief = briefOf({ plan, collection, words });
  const deeds = brief.stops.flatMap((stop) => stop.deeds).filter((deed) => isMeant(deed, claims));
  return {
    claims,
    plan,
    words,
    takenIds: new Set(entries.map(({ id }) => id)),
    deeds: withStates(deeds, { plan, journal: settleEntries(entries).entries }),
  };
}

async function wordsOf({ store, words }: PageContext, personId: string): Promise<Words | null> {
  if (personId === HOUSE_PERSON) return words;
  const person = await store.people.get(personId);
  return person && wordsFor(person.locale, person.units);
}

function isMeant({ potId, action }: BriefDeed, { deed }: AnswerClaims): boolean {
  return deed === null || (deed.potId === potId && deed.action === action);
}

function withStates(
  deeds: readonly BriefDeed[],
  { plan, journal }: { plan: Plan; journal: readonly JournalEntry[] },
): AskedDeed[] {
  const issuedUtcMs = Date.parse(plan.issuedAt);
  const isDone = doneSince(journal, issuedUtcMs);
  const isLater = (deed: BriefDeed) =>
    journal.some(
      ({ id, potId, atUtcMs }) =>
        potId === deed.potId && id.startsWith(laterId(deed.action, "")) && atUtcMs >= issuedUtcMs,
    );
  return deeds.map((deed) => ({
    deed,
    state: isDone(deed) ? "done" : isLater(deed) ? "not-today" : "open",
  }));
}
