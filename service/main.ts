import { readSettings } from "./config.ts";
import { settingFaultLines } from "./setting-faults.ts";
import { startFaultLine } from "./start-fault.ts";
import { startService } from "./start-service.ts";

const BAD_INPUT = 1;
const CANNOT_START = 2;

// Whatever is made is for this user alone, also in a folder that was there before.
process.umask(0o077);
// A closed terminal or a pager that was left ends the reading, not the house.
for (const stream of [process.stdout, process.stderr]) stream.on("error", () => undefined);
const read = readSettings(process.env);
if (read.ok) await run(read.value);
else {
  process.stderr.write(`${settingFaultLines(read.problems).join("\n")}\n`);
  process.exitCode = BAD_INPUT;
}

async function run(settings: Parameters<typeof startService>[0]): Promise<void> {
  try {
    const service = await startService(settings);
    process.stdout.write(`Leebench is at ${service.url}\nNotes are kept in ${settings.dataDir}\n`);
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => void service.close());
  } catch (error) {
    process.stderr.write(`${startFaultLine(error, settings)}\n`);
    process.exitCode = CANNOT_START;
  }
}
