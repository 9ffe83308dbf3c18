import { z } from "zod";
import type { ApiAnswer } from "./api-route.ts";

const MOST = 200;

/** Which part of a list is wanted. */
export const PartQuery = z.object({
  limit: z
    .string()
    .regex(/^\d{1,3}$/)
    .transform(Number)
    .pipe(z.number().min(1).max(MOST))
    .optional()
    .describe(`How many at most, 1 to ${MOST}; 50 when left out.`),
  after: z
    .string()
    .min(1)
    .max(200)
    .optional()
    .describe("As `next` of the part before; from the start when left out."),
});
export type PartAsked = z.output<typeof PartQuery>;

const USUAL = 50;

export function partSchema(item: z.ZodType) {
  return z.object({
    items: z.array(item),
    next: z.string().nullable().describe("Goes into `after`; null at the end."),
  });
}

/** One part of a list, and the way to the next in `next` and in Link (RFC 8288). An unknown `after` begins anew. */
export function partOf<T>(
  all: readonly T[],
  { asked: { limit = USUAL, after }, idOf }: { asked: PartAsked; idOf: (item: T) => string },
): ApiAnswer {
  const from = after === undefined ? 0 : all.findIndex((item) => idOf(item) === after) + 1;
  const items = all.slice(from, from + limit);
  const next = from + limit < all.length ? idOf(items.at(-1)!) : null;
  const link = `<?${new URLSearchParams({ limit: String(limit), after: next ?? "" })}>; rel="next"`;
  return { body: { items, next }, ...(next === null ? {} : { headers: { Link: link } }) };
}
