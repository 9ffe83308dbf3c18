import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createServer } from "node:net";
import { fileURLToPath } from "node:url";
import type { FeedSettings } from "../../service/feed/feed-settings.ts";

export interface HouseProcess {
  readonly url: string;
  /** Ends it as a cut of power would, at once and without a word. */
  kill(): Promise<void>;
}

/** The service as `npm start` runs it, in a process of its own that can be killed. */
export async function houseProcess(of: {
  dataDir: string;
  port: number;
  feed: FeedSettings;
}): Promise<HouseProcess> {
  const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
  const child = spawn(
    process.execPath,
    ["--import", at("../../service/runtime.mjs"), at("../../service/main.ts")],
    {
      env: {
        LEEBENCH_DATA_DIR: of.dataDir,
        LEEBENCH_PORT: String(of.port),
        LEEBENCH_LOG_LEVEL: "silent",
        LEEBENCH_FEED_URL: of.feed.forecastUrl,
        LEEBENCH_ENSEMBLE_URL: of.feed.ensembleUrl,
        TZ: "UTC",
        NODE_COMPILE_CACHE: process.env.NODE_COMPILE_CACHE,
      },
      stdio: ["ignore", "pipe", "inherit"],
    },
  );
  await listening(child);
  const kill = async () => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const ended = once(child, "exit");
    child.kill("SIGKILL");
    await ended;
  };
  return { url: `http://127.0.0.1:${of.port}/`, kill };
}

/** Goes on reading: a service whose output nobody reads would come to a stop. */
function listening(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let said = "";
    child.stdout?.on("data", (chunk) => {
      said += String(chunk);
      if (said.includes("Leebench is at")) resolve();
    });
    child.once("exit", () => reject(new Error(`the service did not start: ${said}`)));
  });
}

/** A port that is free now, to be kept over a restart. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as { port: number };
  server.close();
  await once(server, "close");
  return port;
}
