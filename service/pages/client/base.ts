/** Path under which the house is shown, a slash at its end: that of the script itself, in a page and in the worker. */
export const BASE = new URL("./", scriptAddress()).pathname;

/** The worker has no document; its own address is where it was fetched from. */
function scriptAddress(): string {
  const { document: page } = globalThis as { document?: { currentScript?: { src?: string } | null } };
  return page?.currentScript?.src ?? self.location.href;
}
