import { isIP } from "node:net";

/**
 * Endings that no public name has: RFC 6761 (localhost), RFC 6762 (local), RFC 8375 (home.arpa), kept for private use
 * by ICANN since 2024 (internal), and used by many routers at home though nobody assigned it (lan, common practice).
 */
const HOME_ENDING = /(^|\.)(localhost|local|home\.arpa|internal|lan)$/;

/** Whether a host can only be one of the own network by how it is written: an address, one word, or a home ending. */
export function isHomeName(host: string): boolean {
  const name = host.toLowerCase().replace(/^\[|\]$|\.$/g, "");
  return isIP(name) !== 0 || !name.includes(".") || HOME_ENDING.test(name);
}
