import { TrieRouter } from "hono/router/trie-router";
import { ACCESS_TABLE, type Admits } from "./access-table.ts";

const router = new TrieRouter<Admits>();
for (const [method, path, admits] of ACCESS_TABLE) router.add(method, path, admits);

/** What the table says of a request; undefined where it says nothing. Read by the same rules as the pages' router. */
export function whomItAdmits(method: string, path: string): Admits | undefined {
  const [found] = router.match(method === "HEAD" ? "GET" : method, path);
  return found[0]?.[0];
}
