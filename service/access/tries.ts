/** How often a wrong passphrase or code may be given before one has to wait. */
export interface Tries {
  /** Seconds to wait; 0 when one may try now. */
  waitS(client: string): number;
  /** Counts a try before it is known to be wrong, so that many at once count as many. */
  begin(client: string): void;
  /** Takes back the counting of a try that was right. */
  wasRight(client: string): void;
}

interface Window {
  sinceUtcMs: number;
  count: number;
}

const WINDOW_MS = 60_000;
/** Wrong tries a minute from one device, and from all together before each has to wait. Chosen by us. */
const MOST_OF_ONE = 10;
const MOST_OF_ALL = 60;
/** Devices remembered; where more try within one minute, the whole house's limit has long been reached. */
const MOST_REMEMBERED = 1000;
const EVERYBODY = "\u0000all";

export function newTries(now: () => number): Tries {
  const windows = new Map<string, Window>();
  const windowOf = (client: string): Window => {
    const found = windows.get(client);
    if (found && now() - found.sinceUtcMs <= WINDOW_MS) return found;
    if (windows.size >= MOST_REMEMBERED) windows.delete(windows.keys().next().value ?? "");
    const fresh = { sinceUtcMs: now(), count: 0 };
    windows.delete(client);
    windows.set(client, fresh);
    return fresh;
  };
  const add = (client: string, count: number) => {
    windowOf(client).count += count;
    windowOf(EVERYBODY).count += count;
  };
  const restS = ({ sinceUtcMs }: Window) => Math.max(1, Math.ceil((sinceUtcMs + WINDOW_MS - now()) / 1000));
  return {
    waitS(client) {
      const [own, all] = [windowOf(client), windowOf(EVERYBODY)];
      if (own.count >= MOST_OF_ONE) return restS(own);
      return all.count >= MOST_OF_ALL ? restS(all) : 0;
    },
    begin: (client) => add(client, 1),
    wasRight: (client) => add(client, -1),
  };
}
