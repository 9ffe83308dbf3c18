/** Notifications on this device: asks the browser, then tells the house where to send them. */
export function subscribing(): void {
  const form = document.querySelector<HTMLFormElement>(".push-form");
  if (!form || !("serviceWorker" in navigator) || !("PushManager" in globalThis)) return;
  form.hidden = false;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void subscribe(form).catch(() => refused(form));
  });
}

async function subscribe(form: HTMLFormElement): Promise<void> {
  if ((await Notification.requestPermission()) !== "granted") return refused(form);
  const { pushManager } = await navigator.serviceWorker.ready;
  const subscription = await pushManager.subscribe({
    userVisibleOnly: true,
    applicationServerKey: bytesOf(form.dataset.key ?? ""),
  });
  const { endpoint = "", keys } = subscription.toJSON();
  const fields = new URLSearchParams({
    kind: "push",
    endpoint,
    p256dh: keys?.p256dh ?? "",
    auth: keys?.auth ?? "",
    device: deviceName(),
  });
  const answer = await fetch(form.action, { method: "POST", body: fields, credentials: "same-origin" });
  if (!answer.ok) return refused(form);
  location.reload();
}

function refused(form: HTMLFormElement): void {
  const line = form.querySelector<HTMLElement>(".push-refused");
  if (line) line.hidden = false;
}

function bytesOf(base64url: string): Uint8Array<ArrayBuffer> {
  const text = atob(base64url.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(text, (char) => char.charCodeAt(0));
}

/** Enough to tell the owner's devices apart; a browser's long name for itself says more than is needed. */
function deviceName(): string {
  const { userAgent } = navigator;
  const system = /Android|iPhone|iPad|Windows|Mac OS X|CrOS|Linux/.exec(userAgent)?.[0] ?? "";
  const browser = /(Firefox|Edg|OPR|Chrome|Safari)\/\d+/.exec(userAgent)?.[1] ?? "";
  return [browser, system].filter((part) => part !== "").join(", ") || "-";
}
