import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { openStore, type Store } from "../../../service/store/open-store.ts";

/** A folder that goes away with the test. */
export function tempFolder(): string {
  const dir = mkdtempSync(join(tmpdir(), "leebench-test-"));
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
  return dir;
}

/** A store in memory that closes with the test. */
export async function emptyStore(file = ":memory:"): Promise<Store> {
  const store = await openStore(file, { now: () => 1_000 });
  onTestFinished(() => store.close());
  return store;
}
