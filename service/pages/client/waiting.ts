import { BASE } from "./base.ts";

/** A form that could not be sent: where it goes and what it says, with the hour at which it was filled in. */
export interface WaitingForm {
  /** What the form says, its own id included; the same form kept twice is one. */
  readonly key: string;
  readonly address: string;
  readonly body: string;
  /** A photo that goes with it. */
  readonly file?: File;
}

const DATABASE = "leebench";
const SHELF = "waiting";

/** Keeps a form on this device until it can be sent. */
export async function keepWaiting(form: WaitingForm): Promise<void> {
  await inShelf("readwrite", (shelf) => shelf.put(form));
}

/** Everything that waits, in the order of its keys. */
export async function allWaiting(): Promise<WaitingForm[]> {
  return inShelf("readonly", (shelf) => shelf.getAll() as IDBRequest<WaitingForm[]>);
}

export async function dropWaiting(key: string): Promise<void> {
  await inShelf("readwrite", (shelf) => shelf.delete(key));
}

/** A form as it would have been sent, with the hour of filling in. Two that say different things are two. */
export function waitingForm(address: string, body: URLSearchParams, file?: File): WaitingForm {
  const dated = new URLSearchParams(body);
  if (!dated.has("happenedAtUtcMs")) dated.set("happenedAtUtcMs", String(Date.now()));
  const said = new URLSearchParams(dated);
  said.delete("happenedAtUtcMs");
  const key = `${address}?${said}${file ? ` ${file.name} ${file.size}` : ""}`;
  return { key, address, body: dated.toString(), ...(file ? { file } : {}) };
}

/**
 * Sends what waits, one after the other; what the server does not take as it is goes in as a note, so that nothing
 * is lost. Stops at the first that finds no server. Sending one twice does no harm: every form has its own id.
 * @returns how many still wait
 */
export async function sendWaiting(): Promise<number> {
  for (const form of await allWaiting()) {
    const answer = await post(form).catch(() => null);
    if (answer === null || answer.status >= 500) break;
    if (answer.status >= 400 && !(await keptAsNote(form))) break;
    await dropWaiting(form.key);
  }
  return (await allWaiting()).length;
}

async function keptAsNote({ address, body }: WaitingForm): Promise<boolean> {
  const formId = new URLSearchParams(body).get("formId") ?? "late-form";
  const note = new URLSearchParams({ formId, address, text: body });
  const answer = await post({ address: `${BASE}journal/late`, body: note.toString() }).catch(() => null);
  return answer !== null && answer.status < 400;
}

/** Redirects are not followed: that there is one is all that matters. */
export async function post({ address, body, file }: Omit<WaitingForm, "key">): Promise<{ status: number }> {
  const fields = new URLSearchParams(body);
  const answer = await fetch(address, {
    method: "POST",
    body: file ? withFile(fields, file) : fields,
    redirect: "manual",
    credentials: "same-origin",
  });
  return { status: answer.type === "opaqueredirect" ? 303 : answer.status };
}

function withFile(fields: URLSearchParams, file: File): FormData {
  const form = new FormData();
  for (const [name, value] of fields) form.append(name, value);
  form.append("photo", file);
  return form;
}

function inShelf<T>(mode: IDBTransactionMode, ask: (shelf: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(DATABASE, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(SHELF, { keyPath: "key" });
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const base = opening.result;
      const transaction = base.transaction(SHELF, mode);
      const asked = ask(transaction.objectStore(SHELF));
      // Only a finished transaction has reached the disk.
      transaction.oncomplete = () => {
        base.close();
        resolve(asked.result);
      };
      transaction.onabort = () => {
        base.close();
        reject(transaction.error);
      };
    };
  });
}
