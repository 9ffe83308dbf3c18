import { BASE } from "../client/base.ts";
import { keepWaiting, sendWaiting, type WaitingForm, waitingForm } from "../client/waiting.ts";
import { notices } from "./notices.ts";

const worker = self as unknown as ServiceWorkerGlobalScope;

/** Pages and what they need, as last seen. */
const STORE = "pages";
const FIRST = ["", "pots", "style.css", "app.js", "icon.svg", "away"].map((name) => BASE + name);
/** Whether the house is up, and pages that show secrets or carry a permission in their address. */
const NEVER_KEPT = /^(healthz$|people\b|answer\/|stop-mail\/|calendar\/)/;
/** After this long without an answer the kept page is shown; chosen by us for a weak signal. */
const PATIENCE_MS = 6000;

worker.addEventListener("install", (event) => {
  event.waitUntil(keepFirst());
  void worker.skipWaiting();
});

worker.addEventListener("activate", (event) => event.waitUntil(worker.clients.claim()));

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== worker.location.origin || NEVER_KEPT.test(url.pathname.slice(BASE.length))) return;
  if (request.method === "GET") event.respondWith(freshOrKept(request));
  else if (request.method === "POST" && request.mode === "navigate") event.respondWith(sentOrWaiting(event));
});

notices(worker);

worker.addEventListener("message", (event) => event.waitUntil(keepAhead(event.data as string[])));

worker.addEventListener("sync", (event) => (event as ExtendableEvent).waitUntil(sendWaiting()));

async function keepFirst(): Promise<void> {
  await Promise.all(FIRST.map((address) => fetchAndKeep(new Request(address)).catch(() => null)));
}

/** One after the other: what is asked for now goes first. */
async function keepAhead(addresses: readonly string[]): Promise<void> {
  for (const address of addresses) await fetchAndKeep(new Request(address)).catch(() => null);
}

/** From the server while it answers in time, else as last seen. */
async function freshOrKept(request: Request): Promise<Response> {
  const kept = await (await caches.open(STORE)).match(request);
  try {
    const fresh = fetchAndKeep(request);
    return kept ? await withPatience(fresh) : await fresh;
  } catch {
    return kept ?? (await keptAlike(request)) ?? (await away(request));
  }
}

/** The same page as it was asked for in another way, such as with a form of it open. */
async function keptAlike(request: Request): Promise<Response | undefined> {
  return (await caches.open(STORE)).match(request, { ignoreSearch: true });
}

async function fetchAndKeep(request: Request): Promise<Response> {
  const answer = await fetch(request);
  // Copies of everything and pages about access ask to be kept nowhere.
  const mayKeep = !/\bno-store\b/.test(answer.headers.get("cache-control") ?? "");
  if (mayKeep && answer.ok && !answer.redirected && answer.type === "basic") {
    await (await caches.open(STORE)).put(request, answer.clone());
  }
  return answer;
}

function withPatience<T>(answer: Promise<T>): Promise<T> {
  const tooLong = new Promise<never>((_, reject) =>
    setTimeout(() => reject(new Error("no answer")), PATIENCE_MS),
  );
  return Promise.race([answer, tooLong]);
}

async function away(request: Request): Promise<Response> {
  const page =
    request.mode === "navigate" ? await (await caches.open(STORE)).match(`${BASE}away`) : undefined;
  return page ?? Response.error();
}

const SIGNED_OUT = 401;
const ABOUT_ACCESS = /^(sign-in|sign-out|claim|house\/access)\b/;

/**
 * A form sent without signal waits on the device; the page it came from is shown again and says so. One sent after the
 * session has ended waits as well, until somebody has signed in on the page that is shown then. Whoever comes next sees no kept page of who was before.
 */
async function sentOrWaiting(event: FetchEvent): Promise<Response> {
  const { request } = event;
  const sent = await formOf(request.clone());
  const { pathname } = new URL(request.url);
  const keep = () => keepWaiting(sent);
  // Passphrases and codes never stay on the device.
  const mayWait = !ABOUT_ACCESS.test(pathname.slice(BASE.length));
  try {
    const answer = await fetch(request);
    if (answer.status === SIGNED_OUT && mayWait) {
      await keep();
      return Response.redirect(`${BASE}sign-in`, 303);
    }
    if (!mayWait) {
      await caches.delete(STORE);
      event.waitUntil(keepFirst());
    }
    return answer;
  } catch {
    if (!mayWait) return Response.error();
    await keep();
    return Response.redirect(request.referrer === "" ? BASE : request.referrer, 303);
  }
}

async function formOf(request: Request): Promise<WaitingForm> {
  const address = new URL(request.url).pathname;
  if (!request.headers.get("content-type")?.startsWith("multipart/"))
    return waitingForm(address, new URLSearchParams(await request.text()));
  const fields = [...(await request.formData())];
  const texts = fields.filter((field): field is [string, string] => typeof field[1] === "string");
  const file = fields.map(([, value]) => value).find((value): value is File => typeof value !== "string");
  return waitingForm(address, new URLSearchParams(texts), file?.size ? file : undefined);
}
