import { BASE } from "../client/base.ts";
import { keepWaiting, post, waitingForm } from "../client/waiting.ts";

interface Notice {
  readonly title: string;
  readonly text: string;
  readonly tag: string;
  readonly lang: string;
  readonly answers: readonly { readonly action: string; readonly title: string; readonly path: string }[];
}

/** Buttons are wanted by most browsers and not yet in TypeScript's own list. */
type Shown = NotificationOptions & { actions?: { action: string; title: string }[] };

/** Shows what the house sends, and sends back what is pressed. */
export function notices(worker: ServiceWorkerGlobalScope): void {
  worker.addEventListener("push", (event) => {
    const notice = event.data?.json() as Notice | undefined;
    if (notice) event.waitUntil(show(worker, notice));
  });
  worker.addEventListener("notificationclick", (event) => {
    event.notification.close();
    const { answers } = event.notification.data as Notice;
    const pressed = answers.find(({ action }) => action === event.action);
    event.waitUntil(pressed ? answer(pressed.path) : openBrief(worker));
  });
}

async function show(worker: ServiceWorkerGlobalScope, notice: Notice): Promise<void> {
  const options: Shown = {
    body: notice.text,
    tag: notice.tag,
    ...(notice.lang === "" ? {} : { lang: notice.lang }),
    icon: `${BASE}icon.svg`,
    data: notice,
    actions: notice.answers.map(({ action, title }) => ({ action, title })),
  };
  await worker.registration.showNotification(notice.title, options);
}

/** Without signal the answer waits on the device like any form; the hour of pressing goes with it. */
async function answer(path: string): Promise<void> {
  const form = waitingForm(BASE + path.slice(1), new URLSearchParams());
  const answered = await post(form).catch(() => null);
  if (answered === null || answered.status >= 500) await keepWaiting(form);
}

async function openBrief(worker: ServiceWorkerGlobalScope): Promise<void> {
  const open = await worker.clients.matchAll({ type: "window" });
  const shown = open[0];
  if (shown) await shown.focus();
  else await worker.clients.openWindow(BASE);
}
