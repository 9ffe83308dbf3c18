import { execFile } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { describe, expect, it, onTestFinished } from "vitest";
import { digestOf, newSecret } from "../../../service/access/secret-text.ts";
import { readSettings } from "../../../service/config.ts";
import { startService } from "../../../service/start-service.ts";
import { house } from "../jobs/bench-jobs.ts";
import { fill } from "../store/bench.ts";
import { tempFolder } from "../store/test-store.ts";

const run = promisify(execFile);
const README = readFileSync(join(import.meta.dirname, "../../../README.md"), "utf8");
const section = README.slice(README.indexOf("## A first script"), README.indexOf("## How sure it is"));
const codeOf = (language: string) =>
  new RegExp(`\`\`\`${language}\n(.*?)\`\`\``, "s").exec(section)?.[1] ?? "";

/** A guarded house on loopback with a plan, and a token that may log. */
async function realHouse() {
  const dataDir = tempFolder();
  const read = readSettings({
    LEEBENCH_DATA_DIR: dataDir,
    LEEBENCH_PORT: "0",
    LEEBENCH_PASSPHRASE: "the fig on the stairs",
    LEEBENCH_LOG_LEVEL: "silent",
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { parts } = await house();
  const { fetchWeather, now } = parts;
  const service = await startService(read.value, {
    now,
    beating: false,
    write: () => undefined,
    fetchWeather,
  });
  onTestFinished(() => service.close());
  await fill(service.store);
  const made = await service.replan("yard");
  const token = newSecret();
  const times = { createdUtcMs: now(), endsUtcMs: now() + 60_000, usedUtcMs: null };
  await service.store.tokens.add({
    id: "t",
    digest: digestOf(token),
    name: "script",
    role: "helper",
    ...times,
  });
  const url = service.url.replace(/\/$/, "");
  return {
    service,
    made,
    dataDir,
    env: { ...process.env, HOUSE_URL: url, HOUSE_TOKEN: token, SITE_ID: "yard" },
  };
}

describe("the first script of the README", () => {
  it("runs as it stands: curl reads the site and logs once, the client prints the plan's deeds", async () => {
    const { service, made, dataDir, env } = await realHouse();
    expect(made.ok).toBe(true);
    const curl = codeOf("sh");
    const { stdout } = await run("sh", ["-ec", curl], { env });
    expect(stdout).toContain('"Yard"');
    await run("sh", ["-ec", curl], { env });
    const journal = await service.store.journal.list("yard");
    expect(journal.filter(({ body }) => body.kind === "note")).toHaveLength(1);
    const client = codeOf("ts");
    expect(client.trim().split("\n").length).toBeLessThanOrEqual(15);
    const file = join(dataDir, "client.ts");
    writeFileSync(file, client);
    const printed = await run(process.execPath, ["--no-warnings", file], { env });
    expect(printed.stdout).toMatch(/^p1 \S+ \S+ ml\n$/);
    const denied = await run(process.execPath, ["--no-warnings", file], {
      env: { ...env, HOUSE_TOKEN: "x" },
    }).catch((error) => error.stderr);
    expect(denied).toContain("Sign in at /sign-in");
  });
});
