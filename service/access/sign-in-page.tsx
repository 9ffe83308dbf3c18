import { ProblemList, TextField } from "../pages/forms/fields.tsx";
import type { Typed } from "../pages/forms/form-problems.ts";
import { Frame } from "../pages/frame.tsx";
import type { PageContext } from "../pages/page-context.ts";

export type SignInSaying =
  | { readonly kind: "ask" }
  | { readonly kind: "wrong" }
  | { readonly kind: "wait"; readonly waitS: number };

/** Asks who it is; says nothing of the house. */
export function SignInPage(props: {
  context: PageContext;
  typed: Typed;
  saying: SignInSaying;
  isExposed: boolean;
}) {
  const { context, typed, saying, isExposed } = props;
  const { words, demo } = context;
  const { say } = words;
  const problems = saying.kind === "ask" ? [] : [problemOf(saying)];
  const form = { typed, problems, words };
  return (
    <Frame words={words} title={say("sign-in.title")} here="/sign-in" demo={demo}>
      <h1>{say("sign-in.title")}</h1>
      {isExposed && <p class="problem">{say("sign-in.exposed")}</p>}
      <form method="post" action="/sign-in" class="own">
        <ProblemList form={form} labels={{ name: say("field.account-name") }} />
        <input type="hidden" name="back" value={typed.back ?? "/"} />
        <TextField
          form={form}
          name="name"
          label={say("field.account-name")}
          hint={say("hint.account-name")}
          autocomplete="username"
        />
        <TextField
          form={form}
          name="passphrase"
          type="password"
          label={say("field.passphrase")}
          autocomplete="current-password"
        />
        <button type="submit">{say("sign-in.do")}</button>
      </form>
      <p>
        <a href="/claim">{say("sign-in.have-code")}</a>
      </p>
    </Frame>
  );
}

function problemOf(saying: Exclude<SignInSaying, { kind: "ask" }>) {
  const path = ["passphrase"];
  return saying.kind === "wrong"
    ? { code: "sign-in-wrong", path }
    : { code: "sign-in-wait", path, data: { waitS: saying.waitS } };
}
