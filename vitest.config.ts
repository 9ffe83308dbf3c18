import { tmpdir } from "node:os";
import { join } from "node:path";
import { defineConfig } from "vitest/config";

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "hono/jsx" } },
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    setupFiles: ["tests/setup.ts"],
    // Many tests start the program itself; what it compiles is kept from one start to the next.
    env: { TZ: "UTC", NODE_COMPILE_CACHE: join(tmpdir(), "leebench-tests-compiled") },
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // A second, as it comes, is short for a browser on a busy machine.
    expect: { poll: { timeout: 15_000 } },
  },
});
