import type { Child } from "hono/jsx";
import { LANGUAGES, ownNameOf } from "../../words/languages.ts";
import { Frame } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { BEGIN_STEPS, type BeginStep } from "./missing-step.ts";

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
      <p class="lead">{say(`begin.${step}.text`)}</p>
      {step === "site" && (
        <p>
          <a href="/house/words">{LANGUAGES.map(ownNameOf).join(", ")}</a>
        </p>
      )}
      {children}
    </Frame>
  );
}
