import { type Context, Hono } from "hono";
import type { AccessInput } from "../access/access-input.ts";
import { readBy } from "../case/problems-from-zod.ts";
import { hasAlready } from "../known-etag.ts";
import { problemAnswer, type Refusal } from "../problem-answer.ts";
import {
  API_ROOT,
  type ApiAnswer,
  type ApiCall,
  type ApiFile,
  type ApiOutcome,
  type ApiRoute,
  isRefusal,
  notThere,
  routerPath,
  unfit,
} from "./api-route.ts";
import { API_ROUTES } from "./api-routes.ts";
import { etagOf } from "./etags.ts";
import { openApiDocument } from "./openapi.ts";
import { readBytes } from "./read-bytes.ts";
import { readJson } from "./read-json.ts";
import { referencePage } from "./reference-page.tsx";
import { underKey } from "./under-key.ts";

let madeDocument: string | undefined;

/** Made when first asked for, so that a house which nobody asks starts sooner. */
const apiDocument = () => (madeDocument ??= JSON.stringify(openApiDocument(API_ROUTES)));

type Input = Pick<AccessInput, "context" | "door">;

/** Everything that the pages do, for programs. */
export function apiApp(input: Input): Hono {
  const { context } = input;
  const app = new Hono();
  app.get(`${API_ROOT}/openapi.json`, (c) =>
    c.body(apiDocument(), 200, { "Content-Type": "application/json" }),
  );
  app.get(`${API_ROOT}/reference`, (c) => c.html(referencePage(API_ROUTES, context)));
  for (const route of API_ROUTES) app.on(route.method, routerPath(route), (c) => answered(c, route, input));
  return app;
}

async function answered(c: Context, route: ApiRoute, input: Input): Promise<Response> {
  const call = await callOf(c, route, input);
  const work = () => route.handle(call as ApiCall);
  const { store, now } = input.context;
  const outcome: ApiOutcome = isCall(call)
    ? route.takesKey
      ? await underKey(c, { store, now, request: call.body }, work)
      : await work()
    : call;
  if (isRefusal(outcome)) return problemAnswer(c, outcome);
  return "file" in outcome ? fileOf(c, route, outcome) : answerOf(c, route, outcome);
}

/** Whatever holds the exact place is kept by nothing in between. */
function fileOf(c: Context, { answerType = "" }: ApiRoute, { file, name }: ApiFile): Response {
  c.header("Cache-Control", "no-store");
  if (name !== undefined) c.header("Content-Disposition", `attachment; filename="${name}"`);
  return c.body(file as string, 200, { "Content-Type": answerType });
}

function answerOf(c: Context, route: ApiRoute, { status, body, headers }: ApiAnswer): Response {
  c.header("Cache-Control", "private, no-cache");
  for (const [name, value] of Object.entries(headers ?? {})) c.header(name, value);
  const etag = route.hasEtag ? etagOf(body) : null;
  if (etag !== null) c.header("ETag", etag);
  if (etag !== null && c.req.method === "GET" && hasAlready(c, etag)) return c.body(null, 304);
  const good = status ?? route.answerStatus ?? 200;
  if (good === 204) return c.body(null, good);
  return c.body(JSON.stringify(body), good, {
    "Content-Type": "application/json",
  });
}

function isCall(call: ApiCall | Refusal): call is ApiCall {
  return "params" in call;
}

/** The request in its checked shape, or every fault of it. */
async function callOf(c: Context, route: ApiRoute, { context, door }: Input): Promise<ApiCall | Refusal> {
  const params = c.req.param() as Record<string, string>;
  const site = params.siteId === undefined ? undefined : await context.store.sites.get(params.siteId);
  if (params.siteId !== undefined && !site) return notThere("site");
  const query = route.query ? readBy(route.query, c.req.query()) : { ok: true as const, value: {} };
  if (!query.ok) return unfit(query.problems);
  const body = await bodyOf(c, route);
  if ("detail" in body) return body;
  return { c, context, door, params, query: query.value, body: body.value, site: site! };
}

async function bodyOf(c: Context, { body, takesBytes }: ApiRoute): Promise<{ value: unknown } | Refusal> {
  if (takesBytes) return readBytes(c, takesBytes);
  if (!body) return { value: undefined };
  const json = await readJson(c);
  if (!json.ok) return json.refusal;
  const read = readBy(body, json.value);
  return read.ok ? read : unfit(read.problems);
}
