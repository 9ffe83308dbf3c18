import process from "node:process";
import { command } from "./cli/command.ts";
import { DONE, FAILED } from "./cli/verb.ts";

// Whatever is made is for this user alone, also in a folder that was there before.
process.umask(0o077);

// A reader that has seen enough (head, less) closes the pipe; that is no failure.
process.stdout.on("error", (error: NodeJS.ErrnoException) =>
  process.exit(error.code === "EPIPE" ? DONE : FAILED),
);

process.exitCode = await command(process.argv.slice(2));
