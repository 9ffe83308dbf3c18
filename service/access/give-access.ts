import type { Account } from "../store/accounts-store.ts";
import type { Store } from "../store/open-store.ts";
import type { ApiToken } from "../store/tokens-store.ts";
import type { Role } from "./roles.ts";
import { digestOf, newCode, newSecret, plainCode } from "./secret-text.ts";

const DAY_MS = 86_400_000;
/** How long a one-time code can be used. Chosen by us. */
const CODE_DAYS = 3;
export const LONGEST_TOKEN_DAYS = 730;
const ID_CHARS = 12;

/** Somebody who may come in once a passphrase has been chosen with a code. */
export function newAccount(
  { name, role }: { name: string; role: Exclude<Role, "owner"> },
  createdUtcMs: number,
): Account {
  const nothingYet = { passphrase: null, codeDigest: null, codeEndsUtcMs: null };
  return { id: newId(), name, role, createdUtcMs, ...nothingYet };
}

/** Keeps the account with a fresh one-time code, which is told this once. */
export async function giveCode(
  store: Store,
  account: Account,
  nowUtcMs: number,
): Promise<{ readonly code: string; readonly codeEndsUtcMs: number }> {
  const code = newCode();
  const codeEndsUtcMs = nowUtcMs + CODE_DAYS * DAY_MS;
  await store.accounts.put({ ...account, codeDigest: digestOf(plainCode(code)), codeEndsUtcMs });
  return { code, codeEndsUtcMs };
}

/** Makes a token for scripts, which is told this once. */
export async function addToken(
  store: Store,
  { name, role, days, nowUtcMs }: { name: string; role: Role; days: number; nowUtcMs: number },
): Promise<ApiToken & { readonly token: string }> {
  const token = newSecret();
  const times = { createdUtcMs: nowUtcMs, endsUtcMs: nowUtcMs + days * DAY_MS, usedUtcMs: null };
  const kept = { id: newId(), digest: digestOf(token), name, role, ...times };
  await store.tokens.add(kept);
  return { ...kept, token };
}

function newId(): string {
  return newSecret().slice(0, ID_CHARS);
}
