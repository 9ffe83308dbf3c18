import { randomUUID } from "node:crypto";
import { newDoor } from "../../../service/access/door.ts";
import type { Role } from "../../../service/access/roles.ts";
import { digestOf, newSecret } from "../../../service/access/secret-text.ts";
import { stampOf } from "../../../service/access/sessions.ts";
import { readSettings } from "../../../service/config.ts";
import { houseApp } from "../../../service/house-app.ts";
import { replanNow } from "../../../service/jobs/replan-now.ts";
import type { ReplayDesk } from "../../../service/replay/replay-desk.ts";
import { house } from "../jobs/bench-jobs.ts";

/** Of the right shape and nobody's: sessions in tests are begun without a passphrase. */
const RECORD = `scrypt$15$8$3$c2FsdA$${"A".repeat(43)}`;

export const SAME_ORIGIN = { "sec-fetch-site": "same-origin" };

/** The whole house as it is served, asked without a socket, as set by the environment. */
export async function guardedHouse(
  env: Record<string, string> = {},
  over: Parameters<typeof house>[0] = {},
  replays: ReplayDesk | null = null,
) {
  const read = readSettings(env);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const made = await house(over);
  const { parts, store, clock } = made;
  const told: string[] = [];
  const settings = read.value;
  const door = newDoor({ store, settings, now: parts.now, tell: (text) => void told.push(text) });
  const replanned: string[] = [];
  const app = houseApp({
    parts,
    settings,
    options: {},
    door,
    isStopping: () => false,
    ...(replays ? { replays } : {}),
    replan: async (siteId) => {
      replanned.push(siteId);
      return replanNow(parts, siteId);
    },
  });
  /** Somebody of this role, signed in on a device. @returns headers that a browser would send */
  const signedIn = async (role: Role) => {
    const id = role === "owner" ? "owner" : randomUUID();
    const account = {
      id,
      name: `${role} ${id}`,
      role,
      passphrase: RECORD,
      codeDigest: null,
      codeEndsUtcMs: null,
      createdUtcMs: 1,
    };
    await store.accounts.put(account);
    const secret = newSecret();
    await store.sessions.add({
      digest: digestOf(secret),
      accountId: id,
      stamp: stampOf(account),
      device: "test",
      createdUtcMs: clock.nowUtcMs,
      seenUtcMs: clock.nowUtcMs,
    });
    return { cookie: `leebench=${secret}`, ...SAME_ORIGIN };
  };
  const token = async (role: Role, endsUtcMs = clock.nowUtcMs + 1000) => {
    const secret = newSecret();
    const times = { createdUtcMs: 1, endsUtcMs, usedUtcMs: null };
    await store.tokens.add({ id: randomUUID(), digest: digestOf(secret), name: "t", role, ...times });
    return { authorization: `Bearer ${secret}` };
  };
  const post = (address: string, fields: Record<string, string>, headers: Record<string, string> = {}) =>
    app.request(address, {
      method: "POST",
      body: new URLSearchParams(fields),
      headers: { ...SAME_ORIGIN, ...headers },
    });
  return { ...made, app, door, told, replanned, signedIn, token, post };
}

/** The session's cookie that an answer sets, as the browser sends it back. */
export function cookieOf(answer: Response): string {
  return /^[^;]*/.exec(answer.headers.get("set-cookie") ?? "")?.[0] ?? "";
}
