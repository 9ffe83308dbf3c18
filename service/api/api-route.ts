import type { Context } from "hono";
import type { z } from "zod";
import type { Site } from "../../core/site/site.ts";
import type { Door } from "../access/door.ts";
import type { PageContext } from "../pages/page-context.ts";
import type { Refusal } from "../problem-answer.ts";

/** Where the routes stand; a change that breaks a script gets a number of its own beside it. */
export const API_ROOT = "/api/v1";

export type Method = "GET" | "POST" | "PUT" | "DELETE";

/** 202: begun, not done. 204: done, and there is nothing to say about it. */
type GoodStatus = 200 | 201 | 202 | 204;

/** A request whose shape has been checked. */
export interface ApiCall<Query = unknown, Body = unknown> {
  readonly c: Context;
  readonly context: PageContext;
  /** Who may come in. */
  readonly door: Door;
  /** Of the path, by the names in its braces. */
  readonly params: Readonly<Record<string, string>>;
  readonly query: Query;
  readonly body: Body;
  /** Of a path with {siteId}; it is there. */
  readonly site: Site;
}

export interface ApiAnswer {
  readonly status?: 200 | 201;
  /** Left out where there is nothing to say. */
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

/** An answer that is no JSON: as a picture, a text, or a file to keep under its name. */
export interface ApiFile {
  readonly file: Uint8Array | ReadableStream | string;
  readonly name?: string;
}

export type ApiOutcome = ApiAnswer | ApiFile | Refusal;

/** One route, from which both the answering and the OpenAPI document are made. */
export interface ApiRoute {
  readonly method: Method;
  /** Under API_ROOT, parameters in braces as OpenAPI writes them. */
  readonly path: string;
  /** Name of the operation, unlike any other. */
  readonly id: string;
  readonly group: string;
  readonly summary: string;
  readonly query?: z.ZodObject;
  readonly body?: z.ZodType;
  /** Media types of a body that is no JSON; `body` then is its bytes. */
  readonly takesBytes?: readonly string[];
  /** Left out with 204, and for what is no JSON. */
  readonly answer?: z.ZodType;
  /** Media type of an answer that is no JSON. */
  readonly answerType?: string;
  readonly answerStatus?: GoodStatus;
  /** What it can refuse with, besides what every route can. */
  readonly faults?: readonly number[];
  /** The answer carries an ETag; with PUT, If-Match is needed where something stands there already. */
  readonly hasEtag?: boolean;
  /** PUT under an id that is not there yet makes it. */
  readonly makesNew?: boolean;
  /** A key in Idempotency-Key makes sending twice the same as sending once. */
  readonly takesKey?: boolean;
  // biome-ignore lint/suspicious/noExplicitAny: query and body are what the route's own schemas made of them
  handle(call: ApiCall<any, any>): Promise<ApiOutcome>;
}

export function isRefusal(outcome: ApiOutcome): outcome is Refusal {
  return "detail" in outcome;
}

export function notThere(what: string): Refusal {
  return {
    status: 404,
    code: "not-there",
    detail: `There is no such ${what}. Look at the list for what there is.`,
  };
}

export function unfit(problems: NonNullable<Refusal["problems"]>): Refusal {
  const detail = `${problems.length === 1 ? "One thing does" : `${problems.length} things do`} not fit; every one stands under problems. Nothing was kept.`;
  return { status: 422, code: "not-fit", detail, problems };
}

/** As the router writes it: `:potId` for `{potId}`. */
export function routerPath({ path }: Pick<ApiRoute, "path">): string {
  return API_ROOT + path.replace(/\{(\w+)\}/g, ":$1");
}
