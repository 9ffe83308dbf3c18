import { z } from "zod";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import { InstantMs } from "../../case/instant.ts";
import { EntryBodySchema, JournalEntrySchema } from "../../case/journal-schema.ts";
import { writtenEntry } from "../../case/write-case.ts";
import { type ApiCall, type ApiOutcome, type ApiRoute, notThere, unfit } from "../api-route.ts";
import { problemsOfEntry } from "../fits-house.ts";
import { PartQuery, partOf, partSchema } from "../page-of.ts";
import { idUnderKey } from "../under-key.ts";

const group = "journal";
const Id = z.string().regex(/^[\w.:-]{1,100}$/);

const NewEntry = z.strictObject({
  id: Id.optional().describe("Made up when left out; an id that is there already is not added again."),
  at: InstantMs.optional().describe("When it happened; now when left out."),
  potId: z.string().min(1).max(100).optional().describe("Left out for what concerns the whole site."),
  body: EntryBodySchema,
});

const Correction = NewEntry.omit({ id: true }).describe("How the entry should have read.");
const Kept = z.object({ entry: JournalEntrySchema, isNew: z.boolean() });

/** The journal only grows: a correction or an undo is an entry of its own. */
export const journalRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/sites/{siteId}/journal",
    id: "listEntries",
    group,
    summary: "Everything logged, in the order in which it came in",
    query: PartQuery.extend({ potId: z.string().max(100).optional().describe("Only of this pot.") }),
    answer: partSchema(JournalEntrySchema),
    faults: [404],
    async handle({ context, site, query }) {
      const entries = (await context.store.journal.list(site.id))
        .filter(({ potId }) => query.potId === undefined || potId === query.potId)
        .map(writtenEntry);
      return partOf(entries, { asked: query, idOf: ({ id }) => id });
    },
  },
  {
    method: "POST",
    path: "/sites/{siteId}/journal",
    id: "addEntry",
    group,
    summary: "Logs a deed or an observation; the plan is made anew",
    body: NewEntry,
    answer: Kept,
    answerStatus: 201,
    takesKey: true,
    faults: [404, 409, 422],
    handle: (call) => keptEntry(call, call.body),
  },
  {
    method: "POST",
    path: "/sites/{siteId}/journal/{entryId}/correction",
    id: "correctEntry",
    group,
    summary: "Says how an entry should have read",
    body: Correction,
    answer: Kept,
    answerStatus: 201,
    takesKey: true,
    faults: [404, 409, 422],
    async handle(call) {
      const { at, potId, body } = call.body;
      const of = await entryOf(call);
      if (!of) return notThere("entry");
      const ofEntryId = of.id;
      const where = potId ?? of.potId;
      const correction = { kind: "correction" as const, ofEntryId, atUtcMs: at ?? of.atUtcMs, body };
      return keptEntry(call, { body: where === undefined ? correction : { ...correction, potId: where } });
    },
  },
  {
    method: "POST",
    path: "/sites/{siteId}/journal/{entryId}/undo",
    id: "undoEntry",
    group,
    summary: "Takes an entry back",
    answer: Kept,
    answerStatus: 201,
    takesKey: true,
    faults: [404, 409],
    async handle(call) {
      const of = await entryOf(call);
      return of ? keptEntry(call, { body: { kind: "undo", ofEntryId: of.id } }) : notThere("entry");
    },
  },
];

async function entryOf({ context, site, params }: ApiCall): Promise<JournalEntry | undefined> {
  return (await context.store.journal.list(site.id)).find(({ id }) => id === params.entryId);
}

type Given = Pick<JournalEntry, "potId" | "body"> & { readonly id?: string; readonly at?: number };

async function keptEntry({ c, context, site }: ApiCall, given: Given): Promise<ApiOutcome> {
  const { store, now } = context;
  const { id = `api.${idUnderKey(c, given)}`, at = now(), potId, body } = given;
  if (at > now()) return unfit([{ code: "day-to-come", path: ["at"] }]);
  const entry = { id, atUtcMs: at, recordedUtcMs: now(), ...(potId === undefined ? {} : { potId }), body };
  const written = writtenEntry(entry);
  const problems = problemsOfEntry(await store.collection(site.id), written);
  if (problems.length > 0) return unfit(problems);
  const { added } = await store.journal.append(site.id, [entry]);
  if (added > 0) await context.replan(site.id);
  return { status: added > 0 ? 201 : 200, body: { entry: written, isNew: added > 0 } };
}
