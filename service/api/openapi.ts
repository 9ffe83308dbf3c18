import { z } from "zod";
import type { ApiRoute } from "./api-route.ts";

type Json = Record<string, unknown>;

const Problem = z.object({
  code: z.string(),
  path: z
    .array(z.union([z.string(), z.number()]))
    .describe("Keys and indices from the top of what was sent."),
  data: z.record(z.string(), z.unknown()).optional(),
});

/** RFC 9457, with our own members beside the standard's. */
const ProblemDetails = z.object({
  title: z.string(),
  status: z.int(),
  detail: z.string().describe("One sentence that says what to do next."),
  code: z.string().describe("The kind of problem; programs go by it."),
  requestId: z.string().optional().describe("Under this id the log knows more."),
  problems: z.array(Problem).optional().describe("Every single fault."),
});

/** What every route can refuse with: who asks, how fast, how much, and the house's own faults. */
const ALWAYS = [400, 401, 403, 413, 429];

const MEANINGS: Readonly<Record<number, string>> = {
  400: "Cannot be read",
  401: "Not signed in, or the token has ended",
  403: "Not open to this role, or sent from another site's page",
  404: "Not there",
  409: "Clashes with what is there",
  412: "Changed meanwhile",
  413: "Too large",
  415: "Of another type than this takes",
  422: "Does not fit; every fault stands under problems",
  428: "If-Match is needed",
  429: "Too many requests",
  503: "Not just now",
};

/**
 * The interface as an OpenAPI 3.1 document, made from the schemas by which requests are checked. Schemas show what
 * travels: instants as text, defaults as optional.
 */
export function openApiDocument(routes: readonly ApiRoute[]): Json {
  const schemas = {
    ...Object.assign({}, ...routes.map(schemasOf)),
    ProblemDetails: jsonSchema(ProblemDetails),
  };
  return {
    openapi: "3.1.0",
    info: {
      title: "Leebench",
      version: "1",
      description: "Waters, carries and mixes for plants in pots. Numbers carry their unit in their name.",
      license: { name: "MIT", identifier: "MIT" },
    },
    servers: [{ url: ".", description: "Beside this document." }],
    tags: [...new Set(routes.map(({ group }) => group))].map((name) => ({ name })),
    paths: pathsOf(routes),
    components: { schemas, securitySchemes: { token: { type: "http", scheme: "bearer" } } },
    security: [{ token: [] }, {}],
  };
}

function pathsOf(routes: readonly ApiRoute[]): Json {
  const paths: Record<string, Json> = {};
  for (const route of routes) {
    paths[route.path] = { ...paths[route.path], [route.method.toLowerCase()]: operationOf(route) };
  }
  return paths;
}

function operationOf(route: ApiRoute): Json {
  const { id, group, summary } = route;
  return {
    operationId: id,
    tags: [group],
    summary,
    parameters: [...pathParameters(route), ...queryParameters(route), ...headerParameters(route)],
    ...bodyOf(route),
    responses: { ...goodAnswer(route), ...refusals(route) },
  };
}

function bodyOf({ id, body, takesBytes }: ApiRoute): Json {
  if (takesBytes) return { requestBody: { required: true, content: bytesContent(takesBytes) } };
  return body ? { requestBody: { required: true, content: jsonContent(`${id}Body`) } } : {};
}

function goodAnswer(route: ApiRoute): Json {
  const { method, answerStatus = 200, hasEtag, takesKey, makesNew } = route;
  const headers = hasEtag ? { headers: { ETag: { schema: { type: "string" } } } } : {};
  const good = { description: "Done", ...headers, ...answerContent(route) };
  const isNew = makesNew === true;
  return {
    [answerStatus]: good,
    ...(isNew ? { 201: { ...good, description: "New" } } : {}),
    ...(takesKey && answerStatus === 201 ? { 200: { ...good, description: "Was there already" } } : {}),
    ...(hasEtag && method === "GET" ? { 304: { description: "Not changed" } } : {}),
  };
}

function answerContent({ id, answer, answerType }: ApiRoute): Json {
  if (answerType !== undefined) return { content: bytesContent([answerType]) };
  return answer ? { content: jsonContent(`${id}Answer`) } : {};
}

function refusals({ faults = [], query, body, takesBytes, path }: ApiRoute): Json {
  const statuses = [
    ...ALWAYS,
    ...faults,
    ...(path.includes("{siteId}") ? [404] : []),
    ...(query ? [422] : []),
    ...(body || takesBytes ? [415, 422] : []),
  ];
  return Object.fromEntries(
    [...new Set(statuses)].sort().map((status) => [
      status,
      {
        description: MEANINGS[status] ?? "Refused",
        content: { "application/problem+json": { schema: { $ref: "#/components/schemas/ProblemDetails" } } },
      },
    ]),
  );
}

function pathParameters({ path }: ApiRoute): Json[] {
  return [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: "path",
    required: true,
    schema: { type: "string", minLength: 1, maxLength: 100 },
  }));
}

function queryParameters({ query }: ApiRoute): Json[] {
  return Object.entries(query?.shape ?? {}).map(([name, schema]) => {
    const { description, ...rest } = jsonSchema(schema as z.ZodType);
    return { name, in: "query", required: false, schema: rest, ...(description ? { description } : {}) };
  });
}

function headerParameters({ method, hasEtag, takesKey }: ApiRoute): Json[] {
  const names = [
    ...(hasEtag && method === "PUT" ? ["If-Match"] : []),
    ...(hasEtag && method === "GET" ? ["If-None-Match"] : []),
    ...(takesKey ? ["Idempotency-Key"] : []),
  ];
  return names.map((name) => ({ name, in: "header", required: false, schema: { type: "string" } }));
}

function jsonContent(name: string): Json {
  return { "application/json": { schema: { $ref: `#/components/schemas/${name}` } } };
}

/** What is no JSON has no schema (OpenAPI 3.1, 4.8.14.2). */
function bytesContent(types: readonly string[]): Json {
  return Object.fromEntries(types.map((type) => [type, {}]));
}

function schemasOf({ id, body, answer }: ApiRoute): Json {
  return {
    ...(body ? { [`${id}Body`]: jsonSchema(body, `#/components/schemas/${id}Body`) } : {}),
    ...(answer ? { [`${id}Answer`]: jsonSchema(answer, `#/components/schemas/${id}Answer`) } : {}),
  };
}

/** Parts that a schema refers to within itself are found from the document's root. */
function jsonSchema(schema: z.ZodType, root = "#"): Json {
  const { $schema: _, ...made } = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" });
  const text = JSON.stringify(made).replaceAll('"$ref":"#', `"$ref":"${root}`);
  return JSON.parse(text) as Json;
}
