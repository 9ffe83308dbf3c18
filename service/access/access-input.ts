import type { Context } from "hono";
import type { PageContext } from "../pages/page-context.ts";
import type { Client } from "./client.ts";
import type { Door } from "./door.ts";
import type { Tries } from "./tries.ts";

/** What the pages about access need. */
export interface AccessInput {
  readonly context: PageContext;
  readonly door: Door;
  readonly tries: Tries;
  clientOf(c: Context): Client;
}
