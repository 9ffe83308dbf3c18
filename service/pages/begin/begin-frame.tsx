import type { Child } from "hono/jsx";
import { LANGUAGES, ownNameOf } from "../../words/languages.ts";
import type { Words } from "../../words/words.ts";
import { Frame } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { BEGIN_STEPS, type BeginStep } from "./missing-step.ts";

/** Where what a step before has kept is changed. */
const BACK: Partial<Record<BeginStep, { to: BeginStep; address: string }>> = {
  spots: { to: "site", address: "/house" },
  mix: { to: "spots", address: "/spots" },
  pot: { to: "mix", address: "/mixes" },
};

function WayBack({ to, address, words: { say } }: { to: BeginStep; address: string; words: Words }) {
  return (
    <p>
      <a class="button quiet" href={address}>
        {say("begin.back", { title: say(`begin.${to}.title`) })}
      </a>
    </p>
  );
}

/** One step of the way to a first brief. */
export function BeginFrame({
  context: { words, demo },
  step,
  siteName,
  children,
}: {
  context: PageContext;
  step: BeginStep;
  siteName?: string | undefined;
  children: Child;
}) {
  const { say } = words;
  const stepCount = BEGIN_STEPS.length;
  return (
    <Frame words={words} title={say(`begin.${step}.title`)} here="/begin" siteName={siteName} demo={demo}>
      <p class="step">{say("begin.step", { step: BEGIN_STEPS.indexOf(step) + 1, stepCount })}</p>
      <h1>{say(`begin.${step}.title`)}</h1>
      {step === "site" && <p class="lead">{say("begin.what")}</p>}
      <p class={step === "site" ? undefined : "lead"}>{say(`begin.${step}.text`)}</p>
      {step === "site" && (
        <p>
          <a href="/house/words">{LANGUAGES.map(ownNameOf).join(", ")}</a>
        </p>
      )}
      {children}
      {step in BACK && <WayBack words={words} {...BACK[step]!} />}
    </Frame>
  );
}
