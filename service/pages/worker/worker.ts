import { keepWaiting, sendWaiting, waitingForm } from "../client/waiting.ts";

const worker = self as unknown as ServiceWorkerGlobalScope;

/** Pages and what they need, as last seen. */
const STORE = "pages";
const FIRST = ["/", "/pots", "/style.css", "/app.js", "/icon.svg", "/away"];
/** After this long without an answer the kept page is shown; chosen by us for a weak signal. */
const PATIENCE_MS = 6000;

worker.addEventListener("install", (event) => {
  event.waitUntil(Promise.all(FIRST.map((address) => fetchAndKeep(new Request(address)).catch(() => null))));
  void worker.skipWaiting();
});

worker.addEventListener("activate", (event) => event.waitUntil(worker.clients.claim()));

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== worker.location.origin || url.pathname === "/healthz") return;
  if (request.method === "GET") event.respondWith(freshOrKept(request));
  else if (request.method === "POST" && request.mode === "navigate")
    event.respondWith(sentOrWaiting(request));
});

worker.addEventListener("sync", (event) => (event as ExtendableEvent).waitUntil(sendWaiting()));

/** From the server while it answers in time, else as last seen. */
async function freshOrKept(request: Request): Promise<Response> {
  const kept = await (await caches.open(STORE)).match(request);
  try {
    const fresh = fetchAndKeep(request);
    return kept ? await withPatience(fresh) : await fresh;
  } catch {
    return kept ?? (await away(request));
  }
}

async function fetchAndKeep(request: Request): Promise<Response> {
  const answer = await fetch(request);
  if (answer.ok && !answer.redirected && answer.type === "basic") {
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
  const page = request.mode === "navigate" ? await (await caches.open(STORE)).match("/away") : undefined;
  return page ?? Response.error();
}

/** A form sent without signal waits on the device; the page it came from is shown again and says so. */
async function sentOrWaiting(request: Request): Promise<Response> {
  const body = await request.clone().text();
  try {
    return await fetch(request);
  } catch {
    await keepWaiting(waitingForm(new URL(request.url).pathname, new URLSearchParams(body)));
    return Response.redirect(request.referrer === "" ? "/" : request.referrer, 303);
  }
}
