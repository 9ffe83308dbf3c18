import type { Problem } from "../../core/problem.ts";
import type { Words } from "../words/words.ts";
import { problemText } from "./forms/form-problems.ts";
import { PlainMessage } from "./plain-message.tsx";

interface NoBriefProps {
  readonly title: string;
  readonly words: Words;
  /** Why it could not be made when it was asked for just now. */
  readonly problems?: readonly Problem[];
}

/** Said wherever a brief would stand: that there is none yet, how to ask for it, and where the cause is told. */
export function NoBrief({ title, words, problems = [] }: NoBriefProps) {
  const reasons = [...new Set(problems.map((problem) => problemText(problem, words)))];
  return (
    <PlainMessage title={title} text={words.say("today.none.text")}>
      {reasons.length > 0 && (
        <ul class="facts">
          {reasons.map((reason) => (
            <li>{reason}</li>
          ))}
        </ul>
      )}
      <form method="post" action="/replan">
        <button type="submit">{words.say("today.replan")}</button>
      </form>
      <p>
        <a href="/house/status">{words.say("today.none.why")}</a>
      </p>
    </PlainMessage>
  );
}
