import { type DestinationStream, type Logger, pino } from "pino";
import { scrubbed } from "./scrub.ts";

export type Log = Pick<Logger, "debug" | "info" | "warn" | "error">;

/**
 * Structured log, one JSON object a line. Whatever is logged passes the scrubber first: no secret and no exact
 * coordinate reaches the log, whoever wrote the call.
 * @param secrets  texts that must never appear, such as the passphrase and the mail server's password
 */
export function createLog(
  { level, secrets }: { level: string; secrets: readonly string[] },
  destination: DestinationStream = pino.destination({ fd: 2, sync: true }),
): Log {
  return pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
      hooks: {
        logMethod(given, method) {
          method.apply(this, scrubbed(given, secrets) as Parameters<typeof method>);
        },
      },
    },
    destination,
  );
}
