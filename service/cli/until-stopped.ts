import process from "node:process";

/** Resolves at Ctrl-C or when the system asks the process to end. */
export function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
  });
}
