import { isLoopbackHost } from "../loopback.ts";
import type { Account } from "../store/accounts-store.ts";
import type { Store } from "../store/open-store.ts";
import { storeVersion } from "../store/store-version.ts";
import { passphraseRecord } from "./passphrase.ts";
import { digestOf, newCode, plainCode, sameDigest } from "./secret-text.ts";

/**
 * `open`: on this machine alone and without a passphrase; who can reach it is the owner. `unclaimed`: within reach of
 * others, but nobody has chosen a passphrase yet; only the page for that answers. `guarded`: asks who one is.
 */
export type DoorState = "open" | "unclaimed" | "guarded";

export const OWNER_ID = "owner";

export interface Door {
  state(): Promise<DoorState>;
  /** The owner's passphrase stands in the settings and cannot be changed on the pages. */
  readonly isBySetting: boolean;
  account(id: string): Promise<Account | undefined>;
  /** Who has this name; the owner where none is given. */
  named(name: string): Promise<Account | undefined>;
  /** Whose passphrase may be chosen with this code now; null when it is nobody's. */
  claimantOf(code: string): Promise<Account | null>;
  /** Keeps the passphrase that was chosen with a code; the code is used up. */
  claim(account: Account, passphrase: string): Promise<Account>;
  /** Prints the one-time code for the owner's first passphrase, once. */
  tellCode(): Promise<void>;
}

export interface DoorInput {
  readonly store: Store;
  readonly settings: {
    readonly host: string;
    readonly publicHost: string | null;
    /** The owner's passphrase by setting; goes before one that was chosen on the pages. */
    readonly passphrase: string | null;
  };
  readonly now: () => number;
  /** Prints on the console, where only who runs the house can read. */
  tell(text: string): void;
}

/** Whether others than this machine's own users can reach the house. */
export function isWithinReach({ host, publicHost }: DoorInput["settings"]): boolean {
  return !isLoopbackHost(host) || publicHost !== null;
}

/** Who may come in, and how the first owner does. */
export function newDoor({ store, settings, now, tell }: DoorInput): Door {
  const firstCode = newCode();
  let isTold = false;
  let bySetting: Promise<Account | undefined> | undefined;
  const stored = whileUnchanged(store, () => store.accounts.get(OWNER_ID));
  const owner = async () => {
    bySetting ??= ownerBySetting(store, settings.passphrase);
    return (await bySetting) ?? (await stored());
  };
  const state = async (): Promise<DoorState> => {
    if ((await owner())?.passphrase) return "guarded";
    return isWithinReach(settings) ? "unclaimed" : "open";
  };
  return {
    state,
    isBySetting: settings.passphrase !== null,
    account: (id) => (id === OWNER_ID ? owner() : store.accounts.get(id)),
    async named(name) {
      const asked = await owner();
      const isOwner = name === "" || name.toLowerCase() === asked?.name.toLowerCase();
      return isOwner ? asked : store.accounts.byName(name);
    },
    async claimantOf(code) {
      const digest = digestOf(plainCode(code));
      if ((await state()) !== "guarded")
        return sameDigest(digest, digestOf(plainCode(firstCode))) ? newOwner(now()) : null;
      const account = await store.accounts.byCode(digest);
      return account && now() <= (account.codeEndsUtcMs ?? 0) ? account : null;
    },
    async claim(account, passphrase) {
      const record = await passphraseRecord(passphrase);
      const claimed = { ...account, passphrase: record, codeDigest: null, codeEndsUtcMs: null };
      await store.accounts.put(claimed);
      await store.sessions.endAll(account.id);
      return claimed;
    },
    async tellCode() {
      if (isTold || (await state()) === "guarded") return;
      isTold = true;
      tell(
        `The one-time code for choosing the owner's passphrase is ${firstCode}\n` +
          "Open the page /claim of this house and enter it there.\n",
      );
    },
  };
}

/** Every request asks for the owner; the store is asked again only after something in it has changed. */
function whileUnchanged<T>(store: Store, read: () => Promise<T>): () => Promise<T> {
  const versionNow = storeVersion(store);
  let known: { readonly version: string; readonly value: T } | undefined;
  return async () => {
    const version = versionNow();
    if (known?.version !== version) known = { version, value: await read() };
    return known.value;
  };
}

function newOwner(createdUtcMs: number): Account {
  const empty = { passphrase: null, codeDigest: null, codeEndsUtcMs: null };
  return { id: OWNER_ID, name: "owner", role: "owner", createdUtcMs, ...empty };
}

/**
 * The owner whose passphrase stands in the settings. Its record is salted with the store's own name, so that it is the
 * same after a restart and who is signed in stays so.
 */
async function ownerBySetting(store: Store, passphrase: string | null): Promise<Account | undefined> {
  if (passphrase === null) return undefined;
  const record = await passphraseRecord(passphrase, Buffer.from(store.houseId));
  const kept = (await store.accounts.get(OWNER_ID)) ?? newOwner(0);
  return { ...kept, passphrase: record };
}
