import { z } from "zod";
import { keepPastedPots } from "../../pages/pots/keep-pasted-pots.ts";
import { FURTHER_COLUMNS, NEEDED_COLUMNS } from "../../pages/pots/paste-columns.ts";
import { pastedPots } from "../../pages/pots/paste-rows.ts";
import { type ApiRoute, unfit } from "../api-route.ts";
import { idUnderKey } from "../under-key.ts";
import { KINDS } from "./collection-routes.ts";

const LONGEST = 500_000;

/** Many pots at once. */
export const tableRoutes: readonly ApiRoute[] = [
  {
    method: "POST",
    path: "/sites/{siteId}/pots/table",
    id: "addPotTable",
    group: "pots",
    summary: "Enters every pot of a table as a spreadsheet pastes it, or none; the plan is made anew",
    body: z.strictObject({
      table: z
        .string()
        .min(1)
        .max(LONGEST)
        .describe(
          `Lines of text under a heading; columns, parted by tab, semicolon or comma: ${NEEDED_COLUMNS.join(", ")}. May be left out: ${FURTHER_COLUMNS.join(", ")}.`,
        ),
      vesselSure: z
        .boolean()
        .default(false)
        .describe("Confirms measures that are asked about, such as a base wider than the rim, for all rows."),
    }),
    answer: z.object({ items: z.array(KINDS.pot) }),
    answerStatus: 201,
    takesKey: true,
    async handle({ c, context, site, body }) {
      const collection = await context.store.collection(site.id);
      const read = pastedPots(body.table, {
        formId: idUnderKey(c, body),
        nowUtcMs: context.now(),
        collection,
        words: context.words,
        vesselSure: body.vesselSure,
      });
      if (!read.ok) {
        const ofRows = read.rows.flatMap(({ rowNumber, problems }) =>
          problems.map((problem) => ({ ...problem, path: ["table", rowNumber, ...problem.path] })),
        );
        return unfit([...read.problems, ...ofRows]);
      }
      await keepPastedPots(context, { siteId: site.id, pots: read.pots });
      return { body: { items: read.pots.map(({ pot }) => pot) } };
    },
  },
];
