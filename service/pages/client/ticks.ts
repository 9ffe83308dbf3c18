import { BASE } from "./base.ts";
import { newId } from "./new-id.ts";
import { say } from "./say.ts";
import { showState } from "./state-line.ts";
import { keepWaiting, post, waitingForm } from "./waiting.ts";

/** How long a tick can be taken back where it was made. */
const BACK_MS = 10_000;

/** Nobody is signed in any more; the tick waits until somebody is. */
const SIGNED_OUT = 401;

/** Ticks show at once and are sent behind; without signal they wait on the device. */
export function instantTicks(): void {
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || !form.matches(".tick")) return;
    event.preventDefault();
    const deed = form.querySelector<HTMLInputElement>('input[name="deed"]')?.value ?? "";
    const row = rowOf(deed) ?? form.closest<HTMLElement>(".deed");
    const hadFocus = form.contains(document.activeElement);
    const back = row && markDone(row, deed);
    void send(`${BASE}done`, new URLSearchParams({ deed }));
    showNext();
    // Where the pressed box goes, so would the focus; the bar's box stays for the next deed.
    if (hadFocus && form.closest("[hidden]")) back?.focus();
  });
}

async function send(address: string, body: URLSearchParams): Promise<void> {
  const form = waitingForm(address, body);
  const answer = await post(form).catch(() => null);
  if (answer === null || answer.status >= 500 || answer.status === SIGNED_OUT) await keepWaiting(form);
  await showState();
}

/** The row in the list whose deed is the same, whichever form ticked it. */
function rowOf(deed: string): HTMLElement | null {
  const wanted = withoutId(deed);
  const rows = [...document.querySelectorAll<HTMLElement>(".deed")];
  return rows.find((row) => withoutId(deedIn(row)) === wanted) ?? null;
}

function deedIn(holder: ParentNode): string {
  return holder.querySelector<HTMLInputElement>('input[name="deed"]')?.value ?? "";
}

function withoutId(deed: string): string {
  const fields = new URLSearchParams(deed);
  fields.delete("entryId");
  return fields.toString();
}

/** @returns the button that takes it back */
function markDone(row: HTMLElement, deed: string): HTMLButtonElement | null {
  const form = row.querySelector<HTMLFormElement>(".tick");
  if (!form) return null;
  row.classList.add("deed-done");
  form.hidden = true;
  const back = document.createElement("button");
  back.type = "button";
  back.className = "back";
  back.textContent = say("back");
  back.setAttribute("aria-label", form.dataset.back ?? say("back"));
  form.after(back);
  const settle = setTimeout(() => {
    const done = document.createElement("p");
    done.className = "ticked";
    done.textContent = say("done");
    done.tabIndex = -1;
    const hadFocus = back === document.activeElement;
    back.replaceWith(done);
    if (hadFocus) done.focus();
  }, BACK_MS);
  back.addEventListener("click", () => {
    clearTimeout(settle);
    takeBack({ row, form, back, deed });
  });
  return back;
}

function takeBack(at: { row: HTMLElement; form: HTMLFormElement; back: HTMLElement; deed: string }): void {
  const fields = new URLSearchParams(at.deed);
  const ofEntryId = fields.get("entryId") ?? "";
  void send(`${BASE}undo`, new URLSearchParams({ entryId: `undo.${newId()}`, ofEntryId }));
  fields.set("entryId", `tick.${fields.get("action")}.${newId()}`);
  const input = at.form.querySelector<HTMLInputElement>('input[name="deed"]');
  if (input) input.value = fields.toString();
  const hadFocus = at.back === document.activeElement;
  at.back.remove();
  at.form.hidden = false;
  if (hadFocus) at.form.querySelector("button")?.focus();
  at.row.classList.remove("deed-done");
  showNext();
}

/** The head says how many deeds are left, and the bar at the thumb takes up the first of them. */
function showNext(): void {
  const leftCount = document.querySelectorAll(".deed:not(.deed-done)").length;
  const left = document.getElementById("left");
  if (left) left.textContent = leftCount === 0 ? say("leftNone") : say("left", leftCount);
  const bar = document.querySelector<HTMLElement>(".next");
  if (!bar) return;
  const row = document.querySelector<HTMLElement>(".deed:not(.deed-done)");
  bar.hidden = row === null;
  if (!row) return;
  const text = (selector: string) => row.querySelector(selector)?.textContent ?? "";
  set(bar, ".next-verb", text(".verb"));
  set(bar, ".next-pot", text(".deed-head a"));
  set(bar, ".next-facts", text(".deed-facts"));
  const [from, to] = [row, bar].map((holder) => holder.querySelector<HTMLInputElement>('input[name="deed"]'));
  if (from && to) to.value = from.value;
  const label = row.querySelector(".tick button")?.getAttribute("aria-label");
  if (label) bar.querySelector("button")?.setAttribute("aria-label", label);
}

function set(holder: HTMLElement, selector: string, text: string): void {
  const part = holder.querySelector(selector);
  if (part) part.textContent = text;
}
