import { freshIds } from "./fresh-ids.ts";

const DOOR = "a.log-door";

/** A form comes out of its template where its name is pressed; without scripts the name leads to a page with it open. */
export function unfolding(): void {
  document.addEventListener("click", (event) => {
    const door = event.target instanceof Element ? event.target.closest<HTMLAnchorElement>(DOOR) : null;
    if (door === null || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (unfold(door)) event.preventDefault();
  });
}

/** A kept page is the one without the form that its address asks for. */
export function unfoldAsked(): void {
  const { pathname, search, hash } = location;
  if (search === "") return;
  const doors = [...document.querySelectorAll<HTMLAnchorElement>(DOOR)];
  const door = doors.find(({ href }) => href === new URL(pathname + search + hash, location.href).href);
  if (door) unfold(door);
}

function unfold(door: HTMLAnchorElement): boolean {
  const folded = door.nextElementSibling;
  if (!(folded instanceof HTMLTemplateElement)) return false;
  const form = document.importNode(folded.content, true);
  freshIds(form);
  for (const day of form.querySelectorAll<HTMLInputElement>('input[type="date"]'))
    day.max = door.dataset.today ?? "";
  folded.remove();
  const name = form.querySelector("summary");
  door.replaceWith(form);
  name?.focus();
  return true;
}
