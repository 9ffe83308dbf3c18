import { spawn } from "node:child_process";
import { once } from "node:events";
import { type AddressInfo, createServer } from "node:net";
import { describe, expect, it } from "vitest";
import { tempFolder } from "./store/test-store.ts";

/** The real process, as npm start runs it. */
function main(env: Record<string, string>) {
  const args = ["--import", "./service/runtime.mjs", "service/main.ts"];
  const { PATH, NODE_COMPILE_CACHE } = process.env;
  const child = spawn(process.execPath, args, { env: { PATH, NODE_COMPILE_CACHE, ...env } });
  const said = { out: "", error: "" };
  child.stdout.on("data", (chunk) => {
    said.out += chunk;
  });
  child.stderr.on("data", (chunk) => {
    said.error += chunk;
  });
  const ended = once(child, "close").then(([code, signal]) => ({ code, signal, ...said }));
  const ready = new Promise<string>((resolve) => {
    child.stdout.on("data", () => {
      const url = said.out.match(/Leebench is at (\S+)\n/)?.[1];
      if (url) resolve(url);
    });
  });
  return { child, ended, ready };
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, "close");
  return port;
}

const aliveAt = (port: number) =>
  fetch(`http://127.0.0.1:${port}/healthz`).then(
    ({ ok }) => ok,
    () => false,
  );

describe("the process", () => {
  it.each(["SIGINT", "SIGTERM"] as const)(
    "says where it is, answers, and ends cleanly on %s",
    async (signal) => {
      const dataDir = tempFolder();
      const { child, ended, ready } = main({ LEEBENCH_DATA_DIR: dataDir, LEEBENCH_PORT: "0" });
      const url = await ready;
      expect(await (await fetch(new URL("healthz", url))).text()).toBe("alive\n");
      child.kill(signal);
      const end = await ended;
      expect([end.code, end.signal, end.error]).toEqual([0, null, ""]);
      expect(end.out).toBe(`Leebench is at ${url}\nNotes are kept in ${dataDir}\n`);
    },
  );

  it("lives on when nobody reads what it prints any more", async () => {
    const port = await freePort();
    const { child, ended } = main({ LEEBENCH_DATA_DIR: tempFolder(), LEEBENCH_PORT: String(port) });
    child.stdout.destroy();
    await expect.poll(() => aliveAt(port), { timeout: 50_000, interval: 200 }).toBe(true);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(await aliveAt(port)).toBe(true);
    child.kill("SIGTERM");
    expect(await ended).toMatchObject({ code: 0, error: "" });
  });

  it("with faults in its settings tells all of them and ends with 1", async () => {
    const { code, error, out } = await main({ LEEBENCH_PORT: "x", LEEBENCH_UNITS: "stone" }).ended;
    expect(code).toBe(1);
    expect(out).toBe("");
    expect(error.trim().split("\n")).toEqual([
      "LEEBENCH_PORT: give a whole number from 0 to 65535.",
      "LEEBENCH_UNITS: give one of metric or us.",
    ]);
  });

  it("that cannot start says why in one line and ends with 2", async () => {
    const { code, error } = await main({ LEEBENCH_DATA_DIR: "/dev/null/here", LEEBENCH_PORT: "0" }).ended;
    expect(code).toBe(2);
    expect(error.trim().split("\n")).toHaveLength(1);
  });
});
