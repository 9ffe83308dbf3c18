import { tmpdir } from "node:os";
import { join } from "node:path";
import { defineConfig } from "vitest/config";

const ALL = ["tests/**/*.test.ts", "tests/**/*.test.tsx"];
const BROWSER = "tests/browser/**/*.test.ts";

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "hono/jsx" } },
  test: {
    setupFiles: ["tests/setup.ts"],
    // Many tests start the program itself; what it compiles is kept from one start to the next.
    env: { TZ: "UTC", NODE_COMPILE_CACHE: join(tmpdir(), "leebench-tests-compiled") },
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // A second, as it comes, is short for a browser on a busy machine.
    expect: { poll: { timeout: 15_000 } },
    projects: [
      // Files share a process and what it has read, which halves the time; tests/setup.ts fails one that leaves traces.
      { extends: true, test: { name: "shared", include: ALL, exclude: [BROWSER], isolate: false } },
      { extends: true, test: { name: "browser", include: [BROWSER] } },
    ],
  },
});
