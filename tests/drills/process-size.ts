import { readdirSync, readFileSync, readlinkSync } from "node:fs";
import { basename, join } from "node:path";

export interface ProcessSize {
  readonly residentMb: number;
  /** All but the connections of those who call, which come and go with them. */
  readonly openFiles: number;
  readonly callers: number;
  /** How many of all open files are of which kind. */
  readonly handles: Readonly<Record<string, number>>;
}

const PAGE_BYTES = 4096;

/** Memory and open files of a process, as Linux tells them; null elsewhere. */
export function processSize(pid: number): ProcessSize | null {
  try {
    const [, resident] = readFileSync(`/proc/${pid}/statm`, "utf8").split(" ");
    const handles = handlesOf(pid);
    const count = (isOne: (kind: string) => boolean) =>
      Object.entries(handles).reduce((sum, [kind, many]) => sum + (isOne(kind) ? many : 0), 0);
    return {
      residentMb: Math.round((Number(resident) * PAGE_BYTES) / 2 ** 20),
      openFiles: count((kind) => !isCaller(kind)),
      callers: count(isCaller),
      handles,
    };
  } catch {
    return null;
  }
}

const CALLER = "socket of a caller, ";
const isCaller = (kind: string) => kind.startsWith(CALLER);

function handlesOf(pid: number): Record<string, number> {
  const sockets = socketKinds(pid);
  const counts: Record<string, number> = {};
  for (const fd of readdirSync(`/proc/${pid}/fd`)) {
    const kind = kindOf(linkOf(join(`/proc/${pid}/fd`, fd)), sockets);
    if (kind !== null) counts[kind] = (counts[kind] ?? 0) + 1;
  }
  return counts;
}

/** One that was closed meanwhile has no link any more. */
function linkOf(path: string): string | null {
  try {
    return readlinkSync(path);
  } catch {
    return null;
  }
}

function kindOf(link: string | null, sockets: ReadonlyMap<string, string>): string | null {
  const inode = link && /^socket:\[(\d+)\]$/.exec(link)?.[1];
  if (inode) return sockets.get(inode) ?? "socket, closed";
  return link && (link.startsWith("/") ? `file ${basename(link)}` : link.replace(/:?\[\d+\]$/, ""));
}

const LISTENING = "0A";
/** States of a connection as the kernel numbers them (include/net/tcp_states.h). */
const TCP_STATES: Readonly<Record<string, string>> = {
  "01": "open",
  "08": "waiting to be closed",
  [LISTENING]: "listening",
};

/** What each socket of the process's network is, by inode: which side began it tells callers from calls. */
function socketKinds(pid: number): Map<string, string> {
  const lines = (name: string) =>
    readFileSync(`/proc/${pid}/net/${name}`, "utf8").trim().split("\n").slice(1);
  const tcp = ["tcp", "tcp6"].flatMap(lines).map((line) => line.trim().split(/\s+/));
  const listening = new Set(
    tcp.filter(([, , , state]) => state === LISTENING).map(([, local]) => portOf(local)),
  );
  const kinds = new Map<string, string>();
  for (const [, local, , state = "", , , , , , inode = ""] of tcp) {
    const isCalled = state !== LISTENING && listening.has(portOf(local));
    kinds.set(inode, `${isCalled ? CALLER : "socket of our own, "}${TCP_STATES[state] ?? `state ${state}`}`);
  }
  for (const line of lines("unix")) kinds.set(line.trim().split(/\s+/)[6] ?? "", "socket of this machine");
  return kinds;
}

function portOf(address: string | undefined): string {
  return address?.split(":")[1] ?? "";
}
