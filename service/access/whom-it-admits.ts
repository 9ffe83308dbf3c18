import { RegExpRouter } from "hono/router/reg-exp-router";
import { SmartRouter } from "hono/router/smart-router";
import { TrieRouter } from "hono/router/trie-router";
import { ACCESS_TABLE, type Admits } from "./access-table.ts";

const router = new SmartRouter<Admits>({ routers: [new RegExpRouter(), new TrieRouter()] });
for (const [method, path, admits] of ACCESS_TABLE) router.add(method, path, admits);

/** What the table says of a request; undefined where it says nothing. Read by the same rules as the pages' router. */
export function whomItAdmits(method: string, path: string): Admits | undefined {
  const [found] = router.match(method === "HEAD" ? "GET" : method, path);
  return found[0]?.[0];
}
