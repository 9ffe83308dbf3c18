import { type Context, Hono } from "hono";
import { z } from "zod";
import type { Problem } from "../../core/problem.ts";
import { PASSPHRASE_LEAST_CHARS, PASSPHRASE_MOST_CHARS } from "../environment-schema.ts";
import { ProblemList, TextField } from "../pages/forms/fields.tsx";
import { typedForm } from "../pages/forms/form-body.ts";
import { readForm, type Typed } from "../pages/forms/form-problems.ts";
import { neededText } from "../pages/forms/typed-fields.ts";
import { Frame, pageText } from "../pages/frame.tsx";
import type { PageContext } from "../pages/page-context.ts";
import type { AccessInput } from "./access-input.ts";
import { OWNER_ID } from "./door.ts";
import { signInDevice, type Tried, tryCode } from "./sign-in.ts";

export const newPassphrase = () =>
  z
    .string("missing")
    .min(PASSPHRASE_LEAST_CHARS, "passphrase-short")
    .max(PASSPHRASE_MOST_CHARS, "text-too-long");

const ClaimForm = z
  .object({ code: neededText(), passphrase: newPassphrase(), again: z.string().optional() })
  .refine(({ passphrase, again }) => passphrase === again, { error: "passphrases-differ", path: ["again"] });

/** Choosing a passphrase with a one-time code: the owner's first one from the console, others' from the owner. */
export function claimRoutes(input: AccessInput): Hono {
  const { context, door } = input;
  const routes = new Hono();
  routes.get("/claim", async (c) => {
    await door.tellCode();
    const isFirst = (await door.state()) !== "guarded";
    return c.html(pageText(<ClaimPage context={context} isFirst={isFirst} typed={{}} problems={[]} />));
  });
  routes.post("/claim", async (c) => {
    const typed = await typedForm(c);
    const read = readForm(ClaimForm, typed);
    if (!read.ok) return refusedClaim(c, input, { typed, problems: read.problems, status: 422 });
    const tried = await tryCode(c, read.value.code, input);
    if (tried.kind !== "right") {
      if (tried.kind === "wait") c.header("Retry-After", String(tried.waitS));
      return refusedClaim(c, input, { typed, ...problemOfTry(tried) });
    }
    if (tried.account.id === OWNER_ID && door.isBySetting)
      return refusedClaim(c, input, {
        typed,
        problems: [{ code: "passphrase-by-setting", path: ["code"] }],
        status: 422,
      });
    await signInDevice(c, await door.claim(tried.account, read.value.passphrase), input);
    return c.redirect("/", 303);
  });
  return routes;
}

interface RefusedClaim {
  readonly typed: Typed;
  readonly problems: readonly Problem[];
  readonly status: 401 | 422 | 429;
}

async function refusedClaim(
  c: Context,
  { context, door }: AccessInput,
  { typed, problems, status }: RefusedClaim,
): Promise<Response> {
  const isFirst = (await door.state()) !== "guarded";
  const kept = { code: typed.code ?? "" };
  return c.html(
    pageText(<ClaimPage context={context} isFirst={isFirst} typed={kept} problems={problems} />),
    status,
  );
}

function problemOfTry(tried: Exclude<Tried, { kind: "right" }>): Pick<RefusedClaim, "problems" | "status"> {
  const path = ["code"];
  return tried.kind === "wrong"
    ? { problems: [{ code: "code-wrong", path }], status: 401 }
    : { problems: [{ code: "sign-in-wait", path, data: { waitS: tried.waitS } }], status: 429 };
}

interface ClaimPageProps {
  readonly context: PageContext;
  readonly isFirst: boolean;
  readonly typed: Typed;
  readonly problems: readonly Problem[];
}

function ClaimPage({ context: { words, demo }, isFirst, typed, problems }: ClaimPageProps) {
  const { say } = words;
  const form = { typed, problems, words };
  return (
    <Frame words={words} title={say("claim.title")} here="/claim" demo={demo}>
      <h1>{say("claim.title")}</h1>
      <p class="lead">{say(isFirst ? "claim.first" : "claim.text")}</p>
      <form method="post" action="/claim" class="own">
        <ProblemList form={form} labels={{ passphrase: say("field.new-passphrase") }} />
        <TextField form={form} name="code" label={say("field.code")} autocomplete="one-time-code" />
        <TextField
          form={form}
          name="passphrase"
          type="password"
          label={say("field.new-passphrase")}
          hint={say("hint.new-passphrase", { leastCount: PASSPHRASE_LEAST_CHARS })}
          autocomplete="new-password"
        />
        <TextField
          form={form}
          name="again"
          type="password"
          label={say("field.again")}
          autocomplete="new-password"
        />
        <button type="submit">{say("claim.do")}</button>
      </form>
    </Frame>
  );
}
