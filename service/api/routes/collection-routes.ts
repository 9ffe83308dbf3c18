import type { z } from "zod";
import type { Collection } from "../../../core/plan/collection.ts";
import { CollectionSchema } from "../../case/collection-schema.ts";
import type { Documents } from "../../store/documents.ts";
import type { StoreQueries } from "../../store/store-queries.ts";
import { type ApiOutcome, type ApiRoute, notThere, unfit } from "../api-route.ts";
import { editRefusal } from "../etags.ts";
import { problemsBeside } from "../fits-house.ts";
import { PartQuery, partOf, partSchema } from "../page-of.ts";

type ListName = "spots" | "mixes" | "pots" | "ownComponents" | "ownGroups";

interface Kind {
  readonly list: ListName;
  /** In the path, and as the parameter's name. */
  readonly path: string;
  readonly one: string;
  readonly schema: z.ZodType;
}

const { spots, mixes, pots, ownComponents, ownGroups } = CollectionSchema.shape;

export const KINDS = {
  spot: spots.element,
  mix: mixes.element,
  pot: pots.element,
  component: ownComponents.unwrap().element,
  group: ownGroups.unwrap().element,
} as const;

/** Everything that stands at a site: lists, single things, and their edits. */
export const collectionRoutes: readonly ApiRoute[] = [
  ...routesOf({ list: "pots", path: "pots", one: "pot", schema: KINDS.pot }),
  ...routesOf({ list: "spots", path: "spots", one: "spot", schema: KINDS.spot }),
  ...routesOf({ list: "mixes", path: "mixes", one: "mix", schema: KINDS.mix }),
  ...routesOf({ list: "ownComponents", path: "components", one: "component", schema: KINDS.component }),
  ...routesOf({ list: "ownGroups", path: "groups", one: "group", schema: KINDS.group }),
];

function routesOf({ list, path, one, schema }: Kind): ApiRoute[] {
  const group = path;
  const name = one[0]!.toUpperCase() + one.slice(1);
  const own = list.startsWith("own") ? "own " : "";
  const single = `/sites/{siteId}/${path}/{${one}Id}`;
  return [
    {
      method: "GET",
      path: `/sites/{siteId}/${path}`,
      id: `list${name}s`,
      group,
      summary: `The grower's ${own}${path}, by id`,
      query: PartQuery,
      answer: partSchema(schema),
      async handle({ context, site, query }) {
        return partOf(await of(context.store, list).list(site.id), { asked: query, idOf: ({ id }) => id });
      },
    },
    {
      method: "GET",
      path: single,
      id: `get${name}`,
      group,
      summary: `One ${own}${one}`,
      answer: schema,
      hasEtag: true,
      faults: [404],
      async handle({ context, site, params }) {
        const found = await oneOf(context.store, { list, siteId: site.id, id: params[`${one}Id`]! });
        return found ? { body: found } : notThere(one);
      },
    },
    {
      method: "PUT",
      path: single,
      id: `put${name}`,
      group,
      summary: `Keeps one ${own}${one}, new or changed; the plan is made anew`,
      body: schema,
      answer: schema,
      hasEtag: true,
      makesNew: true,
      faults: [412, 422, 428],
      async handle({ c, context, site, params, body }) {
        const id = params[`${one}Id`]!;
        if (body.id !== id)
          return unfit([{ code: "other-id", path: ["id"], data: { given: body.id, inPath: id } }]);
        const outcome = await context.store.together(async (step): Promise<ApiOutcome> => {
          const standing = await oneOf(step, { list, siteId: site.id, id });
          const refusal = editRefusal(c, standing);
          if (refusal) return refusal;
          const problems = problemsBeside(await step.collection(site.id), { list, value: body });
          if (problems.length > 0) return unfit(problems);
          await of(step, list).put(site.id, body);
          return { status: standing ? 200 : 201, body };
        });
        if (!("detail" in outcome)) await context.replan(site.id);
        return outcome;
      },
    },
  ];
}

type Thing = NonNullable<Collection[ListName]>[number];

function of(queries: StoreQueries, list: ListName): Documents<Thing> {
  return queries[list] as unknown as Documents<Thing>;
}

async function oneOf(
  queries: StoreQueries,
  { list, siteId, id }: { list: ListName; siteId: string; id: string },
): Promise<Thing | undefined> {
  return (await of(queries, list).list(siteId)).find((thing) => thing.id === id);
}
