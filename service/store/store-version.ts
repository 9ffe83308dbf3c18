import type { Store } from "./open-store.ts";

/** Moves with every write of this connection and, through the data version, of any other. */
export function storeVersion({ raw }: Pick<Store, "raw">): () => string {
  const own = raw.prepare("SELECT total_changes()").pluck();
  const others = raw.prepare("PRAGMA data_version").pluck();
  return () => `${own.get()} ${others.get()}`;
}
