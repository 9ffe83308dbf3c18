import process from "node:process";
import { SETTING_DEFAULTS } from "./environment-schema.ts";

/*
 * For whoever watches the process from inside its container: ends with 0 when the service on this machine answers,
 * else with 1.
 */
const WAIT_MS = 4000;

const port = process.env.LEEBENCH_PORT?.trim() || SETTING_DEFAULTS.LEEBENCH_PORT;
try {
  const { ok } = await fetch(`http://127.0.0.1:${port}/healthz`, { signal: AbortSignal.timeout(WAIT_MS) });
  process.exitCode = ok ? 0 : 1;
} catch {
  process.exitCode = 1;
}
