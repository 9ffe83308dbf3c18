import { once } from "node:events";
import { existsSync } from "node:fs";
import { createServer } from "node:net";
import { afterEach, describe, expect, it } from "vitest";
import type { Plan } from "../../../core/plan/plan.ts";
import { commandHere } from "./command-here.ts";
import { runCommand, startCommand } from "./run-command.ts";

type Child = ReturnType<typeof startCommand>;

const running: Child[] = [];

afterEach(() => {
  for (const child of running.splice(0)) child.kill("SIGKILL");
});

/** Starts the demonstration and reads until it has told its address and its data folder. */
async function startDemo(args: readonly string[] = []) {
  const child = startCommand(["demo", ...args]);
  running.push(child);
  let stdout = "";
  let stderr = "";
  child.stderr.on("data", (part) => {
    stderr += part;
  });
  for await (const part of child.stdout.setEncoding("utf8")) {
    stdout += part;
    if (stdout.includes("Ctrl-C")) break;
  }
  const url = /http:\/\/127\.0\.0\.1:\d+\//.exec(stdout)?.[0] ?? "";
  const dataDir = /Its data are in (\S+)/.exec(stdout)?.[1] ?? "";
  return { child, stdout, url, dataDir, stderr: () => stderr };
}

describe("leebench demo", () => {
  it("prints a brief, serves its pages, keeps its data apart, and ends cleanly at Ctrl-C", async () => {
    const { child, stdout, url, dataDir, stderr } = await startDemo(["--port", "0"]);
    expect(stderr()).toBe("");
    expect(stdout).toContain("Varrowhaven");

    const page = await fetch(url);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain("Varrowhaven");

    const kept = await runCommand(["brief", "--json"], { env: { LEEBENCH_DATA_DIR: dataDir } });
    expect([kept.code, kept.stderr]).toEqual([0, ""]);
    const plan = JSON.parse(kept.stdout) as Plan;
    expect(plan.weatherAge.source).toBe("demo");

    const text = await commandHere(["brief"], { env: { LEEBENCH_DATA_DIR: dataDir } });
    expect(stdout).toContain(text.stdout.trimEnd());

    child.kill("SIGINT");
    const [code] = await once(child, "exit");
    expect(code).toBe(0);
    expect(existsSync(dataDir)).toBe(false);
    await expect(fetch(url)).rejects.toThrow();
  });

  it("removes its data also when nobody reads on and the pipe closes", async () => {
    const { child, dataDir } = await startDemo(["--port", "0"]);
    expect(existsSync(dataDir)).toBe(true);
    child.stdout.destroy();
    child.kill("SIGTERM");
    await once(child, "exit");
    expect(existsSync(dataDir)).toBe(false);
  });

  it("takes the next free port when the one asked for is taken", async () => {
    const holder = createServer().listen(0, "127.0.0.1");
    await once(holder, "listening");
    const { port } = holder.address() as { port: number };
    const { child, url } = await startDemo(["--port", String(port)]);
    const given = Number(new URL(url).port);
    expect(given).toBeGreaterThan(port);
    child.kill("SIGTERM");
    await once(child, "exit");
    holder.close();
  });

  it("refuses a port that is none", async () => {
    const { code, stderr } = await commandHere(["demo", "--port", "sixty"]);
    expect(code).toBe(1);
    expect(stderr).toContain("--port");
  });
});
