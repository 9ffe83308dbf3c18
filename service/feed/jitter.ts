/**
 * A share of 0 to 1 that differs from house to house and from try to try, yet not from run to run: houses that
 * were set up alike do not call in step, and a test can foretell it.
 */
export function jitterFrac(...parts: readonly (string | number)[]): number {
  // FNV-1a, 32 bit, then a last mix so that neighbours differ in the high bits too.
  let hash = 0x811c9dc5;
  for (const char of parts.join("|")) hash = Math.imul(hash ^ char.codePointAt(0)!, 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x45d9f3b);
  return ((hash ^ (hash >>> 16)) >>> 0) / 2 ** 32;
}
