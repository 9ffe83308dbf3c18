import { z } from "zod";
import { OWNER_ID } from "../../access/door.ts";
import { addToken, giveCode, LONGEST_TOKEN_DAYS, newAccount } from "../../access/give-access.ts";
import { ROLES } from "../../access/roles.ts";
import type { Account } from "../../store/accounts-store.ts";
import { type ApiCall, type ApiOutcome, type ApiRoute, notThere, unfit } from "../api-route.ts";

const group = "access";
const Name = z.string().trim().min(1).max(60);
const NewAccount = z.strictObject({ name: Name, role: z.enum(["helper", "viewer"]) });

const AccountSchema = z.object({
  id: z.string(),
  name: z.string(),
  role: z.enum(ROLES),
  hasPassphrase: z.boolean(),
});

const CODE = {
  code: z.string().describe("Told this once; opens /claim, where a passphrase is chosen."),
  codeEndsUtcMs: z.number(),
};

const Token = z.object({
  id: z.string(),
  name: z.string(),
  role: z.enum(ROLES),
  createdUtcMs: z.number(),
  endsUtcMs: z.number(),
  usedUtcMs: z.number().nullable().describe("To the hour."),
});

const NewToken = z.strictObject({
  name: Name,
  role: z.enum(ROLES),
  days: z.int().min(1).max(LONGEST_TOKEN_DAYS),
});

/** Who may come in. Passphrases are typed on the pages alone: no script ever needs one. */
export const accessRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/accounts",
    id: "listAccounts",
    group,
    summary: "Who may sign in, and as what",
    answer: z.object({ items: z.array(AccountSchema) }),
    async handle({ context }) {
      return { body: { items: (await context.store.accounts.list()).map(shownAccount) } };
    },
  },
  {
    method: "POST",
    path: "/accounts",
    id: "addAccount",
    group,
    summary: "Lets somebody in, and gives the one-time code for a passphrase of their own",
    body: NewAccount,
    answer: AccountSchema.extend(CODE),
    answerStatus: 201,
    async handle({ context: { store, now }, door, body }) {
      if (await door.named(body.name)) return unfit([{ code: "account-name-taken", path: ["name"] }]);
      const account = newAccount(body, now());
      return { body: { ...shownAccount(account), ...(await giveCode(store, account, now())) } };
    },
  },
  {
    method: "POST",
    path: "/accounts/{accountId}/code",
    id: "giveCode",
    group,
    summary: "Gives a fresh one-time code",
    answer: z.object(CODE),
    faults: [404],
    handle: ofGuest(async (account, { context: { store, now } }) => ({
      body: await giveCode(store, account, now()),
    })),
  },
  {
    method: "POST",
    path: "/accounts/{accountId}/sign-out",
    id: "signOutAccount",
    group,
    summary: "Signs somebody out on every device",
    answerStatus: 204,
    faults: [404],
    handle: ofGuest(async (account, { context: { store } }) => {
      await store.sessions.endAll(account.id);
      return {};
    }),
  },
  {
    method: "DELETE",
    path: "/accounts/{accountId}",
    id: "removeAccount",
    group,
    summary: "Lets somebody in no more, from this moment",
    answerStatus: 204,
    faults: [404],
    handle: ofGuest(async (account, { context: { store } }) => {
      await store.sessions.endAll(account.id);
      await store.accounts.remove(account.id);
      return {};
    }),
  },
  {
    method: "GET",
    path: "/tokens",
    id: "listTokens",
    group,
    summary: "Tokens for scripts, newest first, those that have ended included",
    answer: z.object({ items: z.array(Token) }),
    async handle({ context }) {
      const items = (await context.store.tokens.list()).map(({ digest: _, ...token }) => token);
      return { body: { items } };
    },
  },
  {
    method: "POST",
    path: "/tokens",
    id: "addToken",
    group,
    summary: "Makes a token, which is told this once",
    body: NewToken,
    answer: Token.extend({ token: z.string() }),
    answerStatus: 201,
    async handle({ context: { store, now }, body }) {
      const { digest: _, ...made } = await addToken(store, { ...body, nowUtcMs: now() });
      return { body: made };
    },
  },
  {
    method: "DELETE",
    path: "/tokens/{tokenId}",
    id: "removeToken",
    group,
    summary: "Takes a token back",
    answerStatus: 204,
    faults: [404],
    async handle({ context: { store }, params }) {
      const isThere = (await store.tokens.list()).some(({ id }) => id === params.tokenId);
      if (!isThere) return notThere("token");
      await store.tokens.remove(params.tokenId!);
      return {};
    },
  },
];

/** The owner's own access is looked after on the pages. */
function ofGuest(handle: (account: Account, call: ApiCall) => Promise<ApiOutcome>): ApiRoute["handle"] {
  return async (call: ApiCall) => {
    const id = call.params.accountId!;
    const account = id === OWNER_ID ? undefined : await call.context.store.accounts.get(id);
    return account ? handle(account, call) : notThere("account");
  };
}

function shownAccount({ id, name, role, passphrase }: Account): z.output<typeof AccountSchema> {
  return { id, name, role, hasPassphrase: passphrase !== null };
}
