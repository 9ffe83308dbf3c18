const IDLE_WAIT_MS = 4000;

/** What is looked at now comes before what is kept for later. */
export function idle(): Promise<void> {
  return new Promise((resolve) => {
    if ("requestIdleCallback" in globalThis) requestIdleCallback(() => resolve(), { timeout: IDLE_WAIT_MS });
    else setTimeout(resolve, IDLE_WAIT_MS / 4);
  });
}
