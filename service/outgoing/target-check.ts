import { lookup as systemLookup } from "node:dns/promises";
import { isIP, type LookupFunction } from "node:net";
import type { Outcome, Problem } from "../../core/problem.ts";
import { type AddressKind, addressKind } from "./address-kind.ts";

/** A host that may be called, with the one address under which it was looked at. */
export interface CheckedTarget {
  readonly host: string;
  readonly address: string;
  readonly family: 4 | 6;
}

export interface TargetRule {
  /** Hosts of the own network that the owner named in the settings, as names or addresses. */
  readonly allowedHosts: readonly string[];
  /** All addresses of a name; the system's own when left out. */
  lookUp?(host: string): Promise<readonly { readonly address: string }[]>;
}

/** What the owner may open by naming the host. */
const OWN_NETWORK: ReadonlySet<AddressKind> = new Set(["loopback", "private", "shared", "link-local"]);

/**
 * Looks a host up once and refuses it when any of its addresses leads into the own network, unless the owner named it.
 * Whoever connects must use the address given back (`pinnedLookup`): a second look could be answered otherwise.
 *
 * @param host  as in a URL, IPv6 addresses with or without brackets
 * @returns problems "target-unknown-host", "target-in-own-network" or "target-not-callable"
 */
export async function checkTarget(host: string, rule: TargetRule): Promise<Outcome<CheckedTarget>> {
  const name = bareHost(host);
  const addresses = await addressesOf(name, rule);
  const [first] = addresses;
  if (first === undefined) return refused("target-unknown-host", { host: name });
  const isNamed = rule.allowedHosts.some((allowed) => bareHost(allowed) === name);
  for (const address of addresses) {
    const kind = addressKind(address);
    if (kind === "public" || (isNamed && OWN_NETWORK.has(kind))) continue;
    return refused(OWN_NETWORK.has(kind) ? "target-in-own-network" : "target-not-callable", {
      host: name,
      kind,
    });
  }
  return { ok: true, value: { host: name, address: first, family: isIP(first) === 4 ? 4 : 6 } };
}

/** Leads every look-up of a socket (`lookup` of net, tls, http or an undici Agent's `connect`) to the checked address. */
export function pinnedLookup({ address, family }: CheckedTarget): LookupFunction {
  return (_host, options, done) => {
    if (options.all) done(null, [{ address, family }]);
    else done(null, address, family);
  };
}

async function addressesOf(name: string, { lookUp = allAddresses }: TargetRule): Promise<string[]> {
  if (isIP(name.split("%")[0] ?? "") !== 0) return [name];
  try {
    return (await lookUp(name)).map(({ address }) => address);
  } catch {
    return [];
  }
}

function allAddresses(host: string) {
  return systemLookup(host, { all: true });
}

/** Small letters, no brackets, no dot at the end: as two writings of one host are compared. */
function bareHost(host: string): string {
  return host
    .trim()
    .toLowerCase()
    .replace(/^\[|\]$/g, "")
    .replace(/\.$/, "");
}

function refused(code: string, data: Readonly<Record<string, unknown>>) {
  const problem: Problem = { code, path: ["target"], data };
  return { ok: false as const, problems: [problem] };
}
