/** Whether a line holds every word that is looked for, in any order, however it is spaced or capitalised. */
export function isFound(line: string, search: string): boolean {
  const held = plain(line);
  return plain(search)
    .split(" ")
    .every((word) => held.includes(word));
}

/** Small, composed, and with every gap a single space, the ones that do not break as well. */
function plain(text: string): string {
  return text.normalize("NFC").toLowerCase().replaceAll(/\s+/g, " ").trim();
}
