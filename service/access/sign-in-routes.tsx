import { type Context, Hono } from "hono";
import { typedForm } from "../pages/forms/form-body.ts";
import type { Typed } from "../pages/forms/form-problems.ts";
import { pageText } from "../pages/frame.tsx";
import type { AccessInput } from "./access-input.ts";
import { digestOf } from "./secret-text.ts";
import { dropSessionCookie, readSessionCookie } from "./session-cookie.ts";
import { signInDevice, tryPassphrase } from "./sign-in.ts";
import { SignInPage, type SignInSaying } from "./sign-in-page.tsx";

const UNAUTHORIZED = 401;
const TOO_MANY = 429;

/** Coming in with name and passphrase, and going out again. */
export function signInRoutes(input: AccessInput): Hono {
  const { context, door, clientOf } = input;
  const routes = new Hono();
  const page = (c: Context, typed: Typed, saying: SignInSaying) => {
    const isExposed = !clientOf(c).isSecure && !clientOf(c).isThisMachine;
    return pageText(<SignInPage context={context} typed={typed} saying={saying} isExposed={isExposed} />);
  };
  routes.get("/sign-in", async (c) => {
    const state = await door.state();
    if (state !== "guarded") return c.redirect(state === "open" ? "/" : "/claim", 303);
    return c.html(page(c, { back: pathBack(c.req.query("back")) }, { kind: "ask" }));
  });
  routes.post("/sign-in", async (c) => {
    if ((await door.state()) !== "guarded") return c.redirect("/sign-in", 303);
    const typed = await typedForm(c);
    const { name = "", passphrase = "", back } = typed;
    const tried = await tryPassphrase(c, { name: name.trim(), passphrase }, input);
    if (tried.kind === "right") {
      await signInDevice(c, tried.account, input);
      return c.redirect(pathBack(back), 303);
    }
    if (tried.kind === "wait") c.header("Retry-After", String(tried.waitS));
    const again = { name, back: pathBack(back) };
    return c.html(page(c, again, tried), tried.kind === "wait" ? TOO_MANY : UNAUTHORIZED);
  });
  routes.post("/sign-out", async (c) => {
    const secret = readSessionCookie(c, clientOf(c));
    if (secret !== undefined) await context.store.sessions.end(digestOf(secret));
    dropSessionCookie(c, clientOf(c));
    return c.redirect("/sign-in", 303);
  });
  return routes;
}

/** A page of this house, or its first one: where a link leads after signing in is not for others to say. */
function pathBack(back: string | undefined): string {
  return back !== undefined && /^\/(?![/\\])[^\\\p{Cc}]*$/u.test(back) ? back : "/";
}
