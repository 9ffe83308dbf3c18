import type { z } from "zod";
import type { Problem } from "../../core/problem.ts";
import type { StoreQueries } from "../store/store-queries.ts";
import { type ApiCall, type ApiOutcome, type ApiRoute, isRefusal, notThere, unfit } from "./api-route.ts";
import { editRefusal } from "./etags.ts";

/** One value that stands at one address: how it is read, checked and kept. */
export interface ValueKind<V> {
  readonly path: string;
  /** In the names of the operations: getSite, putSite. */
  readonly name: string;
  readonly group: string;
  /** How a missing one is called. */
  readonly one: string;
  readonly schema: z.ZodType<V>;
  readonly reads: string;
  readonly changes: string;
  read(queries: StoreQueries, call: ApiCall): Promise<V | undefined>;
  /** What does not fit beside everything else there is. */
  problems?(value: V, call: ApiCall, queries: StoreQueries): Promise<readonly Problem[]> | readonly Problem[];
  write(queries: StoreQueries, value: V, call: ApiCall): Promise<void>;
  /** What follows from the change, once it is kept. */
  after?(value: V, call: ApiCall): unknown;
}

/** Reading the value with its ETag, and changing it in view of what stands there (If-Match). */
export function valueRoutes<V>(kind: ValueKind<V>): ApiRoute[] {
  const { path, group, name, schema, one, reads, changes } = kind;
  const common = { path, group, answer: schema, hasEtag: true };
  return [
    {
      ...common,
      method: "GET",
      id: `get${name}`,
      summary: reads,
      faults: [404],
      async handle(call) {
        const found = await kind.read(call.context.store, call);
        return found === undefined ? notThere(one) : { body: found };
      },
    },
    {
      ...common,
      method: "PUT",
      id: `put${name}`,
      summary: changes,
      body: schema,
      faults: [404, 412, 422, 428],
      handle: (call) => changed(kind, call),
    },
  ];
}

async function changed<V>(kind: ValueKind<V>, call: ApiCall<unknown, V>): Promise<ApiOutcome> {
  const { context, body, c } = call;
  const outcome = await context.store.together(async (step): Promise<ApiOutcome> => {
    const standing = await kind.read(step, call);
    if (standing === undefined) return notThere(kind.one);
    const refusal = editRefusal(c, standing);
    if (refusal) return refusal;
    const problems = (await kind.problems?.(body, call, step)) ?? [];
    if (problems.length > 0) return unfit(problems);
    await kind.write(step, body, call);
    return { body: await kind.read(step, call) };
  });
  if (!isRefusal(outcome)) await kind.after?.(body, call);
  return outcome;
}

/** What is sent must carry the id under which it stands. */
export function idProblems(given: string, inPath: string | undefined): Problem[] {
  return given === inPath ? [] : [{ code: "other-id", path: ["id"], data: { given, inPath } }];
}
