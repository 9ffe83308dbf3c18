import { type Context, Hono } from "hono";
import { z } from "zod";
import type { Problem } from "../../core/problem.ts";
import { typedForm } from "../pages/forms/form-body.ts";
import { readForm, type Typed } from "../pages/forms/form-problems.ts";
import { choice, neededNumber, neededText } from "../pages/forms/typed-fields.ts";
import { pageText } from "../pages/frame.tsx";
import type { Account } from "../store/accounts-store.ts";
import type { Shown } from "./access-form.tsx";
import type { AccessInput } from "./access-input.ts";
import { newPassphrase } from "./claim-routes.tsx";
import { OWNER_ID } from "./door.ts";
import { addToken, giveCode, LONGEST_TOKEN_DAYS, newAccount } from "./give-access.ts";
import { HouseAccessPage } from "./house-access-page.tsx";
import { passphraseRecord } from "./passphrase.ts";
import { ROLES } from "./roles.ts";
import { signInDevice, tryPassphrase } from "./sign-in.ts";
import type { Visitor } from "./visitor.ts";

const PersonForm = z.object({ name: neededText(60), mayDo: choice(["helper", "viewer"]) });
const TokenForm = z.object({
  name: neededText(60),
  mayDo: choice(ROLES),
  days: neededNumber({ from: 1, to: LONGEST_TOKEN_DAYS, whole: true }),
});
const ChangeForm = z.object({ passphrase: z.string("missing"), fresh: newPassphrase() });

/** Own passphrase and devices for everybody; people and tokens for the owner. */
export function houseAccessRoutes(input: AccessInput): Hono {
  const { context, door } = input;
  const { store, now } = context;
  const routes = new Hono();
  const show = async (c: Context, shown: Partial<Shown>, status: 200 | 401 | 422 | 429 = 200) => {
    c.header("Cache-Control", "no-store");
    return c.html(pageText(await HouseAccessPage({ input, visitor: c.get("visitor"), shown })), status);
  };
  routes.get("/house/access", (c) => show(c, {}));
  routes.post("/house/access/passphrase", async (c) => {
    const typed = await typedForm(c);
    const account = await accountOf(c, input);
    if (!account) return c.redirect("/house/access", 303);
    const problems = await changeProblems(c, { typed, account }, input);
    if (problems.length > 0) return show(c, { form: "passphrase", problems }, 422);
    const changed = { ...account, passphrase: await passphraseRecord(typed.fresh ?? "") };
    await store.accounts.put(changed);
    await store.sessions.endAll(account.id);
    await signInDevice(c, changed, input);
    return c.redirect("/house/access", 303);
  });
  routes.post("/house/access/sign-out-everywhere", async (c) => {
    const account = await accountOf(c, input);
    if (account) await store.sessions.endAll(account.id);
    return c.redirect("/sign-in", 303);
  });
  routes.post("/house/access/people", async (c) => {
    const typed = await typedForm(c);
    const read = readForm(PersonForm, typed);
    if (!read.ok) return show(c, { form: "people", typed, problems: read.problems }, 422);
    if (await door.named(read.value.name))
      return show(
        c,
        { form: "people", typed, problems: [{ code: "account-name-taken", path: ["name"] }] },
        422,
      );
    const { name, mayDo: role } = read.value;
    return show(c, await withCode(newAccount({ name, role }, now()), input));
  });
  routes.post("/house/access/people/:id", async (c) => {
    const account = await store.accounts.get(c.req.param("id"));
    if (!account || account.id === OWNER_ID) return c.redirect("/house/access", 303);
    const { do: deed } = await typedForm(c);
    if (deed === "code") return show(c, await withCode(account, input));
    await store.sessions.endAll(account.id);
    if (deed === "remove") await store.accounts.remove(account.id);
    return c.redirect("/house/access", 303);
  });
  routes.post("/house/access/tokens", async (c) => {
    const typed = await typedForm(c);
    const read = readForm(TokenForm, typed);
    if (!read.ok) return show(c, { form: "tokens", typed, problems: read.problems }, 422);
    const { name, mayDo: role, days } = read.value;
    const { token } = await addToken(store, { name, role, days, nowUtcMs: now() });
    return show(c, { token });
  });
  routes.post("/house/access/tokens/:id", async (c) => {
    await store.tokens.remove(c.req.param("id"));
    return c.redirect("/house/access", 303);
  });
  return routes;
}

/** The account of who is signed in; none in an open house and for a token. */
async function accountOf(c: Context, { door }: AccessInput): Promise<Account | undefined> {
  const visitor: Visitor = c.get("visitor");
  return visitor.kind === "session" ? door.account(visitor.accountId) : undefined;
}

async function withCode(account: Account, { context: { store, now } }: AccessInput): Promise<Partial<Shown>> {
  const { code } = await giveCode(store, account, now());
  return { code, codeFor: account.name };
}

async function changeProblems(
  c: Context,
  { typed, account }: { typed: Typed; account: Account },
  input: AccessInput,
): Promise<readonly Problem[]> {
  if (account.id === OWNER_ID && input.door.isBySetting)
    return [{ code: "passphrase-by-setting", path: ["fresh"] }];
  const read = readForm(ChangeForm, typed);
  if (!read.ok) return read.problems;
  const tried = await tryPassphrase(c, { name: account.name, passphrase: read.value.passphrase }, input);
  if (tried.kind === "right") return [];
  const path = ["passphrase"];
  return tried.kind === "wait"
    ? [{ code: "sign-in-wait", path, data: { waitS: tried.waitS } }]
    : [{ code: "passphrase-wrong", path }];
}
