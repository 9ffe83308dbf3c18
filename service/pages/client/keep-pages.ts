import { BASE } from "./base.ts";
import { idle } from "./idle.ts";

interface UrlPolicy {
  createScriptURL(text: string): unknown;
}

interface PolicyMaker {
  createPolicy(name: string, rules: { createScriptURL(text: string): string }): UrlPolicy;
}

const WORKER = `${BASE}worker.js`;
/** Pages of pots that the brief names, kept ahead for the walk without signal. Chosen by us. */
const KEPT_AHEAD = 40;

/** Starts the worker that keeps the last pages readable without signal; only where the browser allows one. */
export async function keepPages(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  await idle();
  try {
    await navigator.serviceWorker.register(trusted(WORKER) as string);
    keepAhead(await navigator.serviceWorker.ready);
  } catch {
    // Private windows and plain http have no workers; every page works without.
  }
}

/** The policy of the page lets scripts come from this one address only. */
function trusted(address: string): unknown {
  const maker = (globalThis as { trustedTypes?: PolicyMaker }).trustedTypes;
  if (!maker) return address;
  const createScriptURL = (text: string) => {
    if (text !== WORKER) throw new TypeError("not our worker");
    return text;
  };
  return maker.createPolicy("leebench", { createScriptURL }).createScriptURL(address);
}

/**
 * Pages that are worth reading on the walk: the shelf, and each pot that the brief names. The worker gets them: the page
 * stays free for the thumb, and may be left meanwhile.
 */
function keepAhead({ active }: ServiceWorkerRegistration): void {
  const wantsLess = (navigator as { connection?: { saveData?: boolean } }).connection?.saveData === true;
  if (wantsLess || location.pathname !== BASE) return;
  const links = [...document.querySelectorAll<HTMLAnchorElement>(".deed-head a")].map(({ href }) => href);
  active?.postMessage([`${BASE}pots`, ...new Set(links)].slice(0, KEPT_AHEAD));
}
