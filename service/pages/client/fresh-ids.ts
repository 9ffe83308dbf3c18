import { newId } from "./new-id.ts";

/**
 * Gives every form an id of its own each time the page is shown. A kept page is shown many times, and what is entered
 * on it a second time is a second entry; a double tap on one showing stays one.
 */
export function freshIds(within: ParentNode = document): void {
  for (const input of within.querySelectorAll<HTMLInputElement>('input[name="formId"]'))
    input.value = newId();
}
