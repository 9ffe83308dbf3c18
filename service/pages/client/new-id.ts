/** An id that nobody else has; works on plain http as well, where randomUUID is not offered. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
}
