import type { ServiceSettings } from "./config.ts";
import { StoreFault } from "./store/store-fault.ts";

/** Why the service could not start, and what to do next, in one line. */
export function startFaultLine(error: unknown, { host, port, dataDir }: ServiceSettings): string {
  if (error instanceof StoreFault) return `${dataDir}: ${error.message}`;
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  switch (code) {
    case "EADDRINUSE":
      return `Port ${port} on ${host} is taken. Stop what listens there, or set LEEBENCH_PORT to another.`;
    case "EADDRNOTAVAIL":
    case "ENOTFOUND":
      return `${host} is not an address of this machine. Set LEEBENCH_HOST to one of its own.`;
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return `Not allowed to use ${dataDir} or port ${port}. Give access, or set LEEBENCH_DATA_DIR and LEEBENCH_PORT.`;
    case "ENOSPC":
      return `The disk that holds ${dataDir} is full. Free some space and start again.`;
    default:
      return `Could not start: ${error instanceof Error ? error.message : String(error)}`;
  }
}
