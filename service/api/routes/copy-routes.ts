import { basename } from "node:path";
import { z } from "zod";
import { backUp } from "../../store/backup.ts";
import { ExportSchema } from "../../store/export-schema.ts";
import { COPY_TYPE, copyStream, keptCopies } from "../../store/kept-copies.ts";
import { potsCsv } from "../../store/pots-csv.ts";
import { exportAll } from "../../store/transfer.ts";
import { type ApiRoute, notThere } from "../api-route.ts";

const group = "copies";
const Copy = z.object({ name: z.string(), bytes: z.int() });

/** Copies of everything, and everything in readable form. Bringing a copy back is a command: the house is shut then. */
export const copyRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/copies",
    id: "listCopies",
    group,
    summary: "The copies that are kept, newest first",
    answer: z.object({ items: z.array(Copy) }),
    handle: async ({ context }) => ({ body: { items: keptCopies(context.copies.dir) } }),
  },
  {
    method: "POST",
    path: "/copies",
    id: "makeCopy",
    group,
    summary: "Makes a copy now; it is opened, checked and counted before it gets its name",
    answer: Copy.extend({
      counts: z.record(z.string(), z.int()).describe("Rows in the copy, by table."),
      removed: z.array(z.string()).describe("Older copies that made room."),
    }),
    answerStatus: 201,
    faults: [503],
    async handle({ context: { store, copies, now } }) {
      if (copies.dir === null) return NO_COPIES;
      const { dir, keepCount } = copies;
      const { file, bytes, counts, removed } = await backUp(store, { dir, keepCount, nowUtcMs: now() });
      return { body: { name: basename(file), bytes, counts, removed } };
    },
  },
  {
    method: "GET",
    path: "/copies/{copyName}",
    id: "getCopy",
    group,
    summary: "One copy, as leebench restore reads it",
    answerType: COPY_TYPE,
    faults: [404],
    async handle({ context, params }) {
      const name = params.copyName!;
      const file = copyStream(context.copies.dir, name);
      return file ? { file, name } : notThere("copy");
    },
  },
  {
    method: "GET",
    path: "/export",
    id: "exportAll",
    group,
    summary: "Everything of the house as one object, as leebench import reads it",
    answer: ExportSchema,
    handle: async ({ context }) => ({ body: await exportAll(context.store, context.now()) }),
  },
  {
    method: "GET",
    path: "/sites/{siteId}/pots.csv",
    id: "exportPots",
    group,
    summary: "The pots as a table for a spreadsheet (RFC 4180)",
    answerType: "text/csv; charset=utf-8",
    async handle({ context, site }) {
      return { file: potsCsv(await context.store.pots.list(site.id)), name: "pots.csv" };
    },
  },
];

const NO_COPIES = {
  status: 503,
  code: "no-copies-here",
  detail: "This house keeps its notes nowhere, so there is nothing to copy. Start it with a data folder.",
} as const;
