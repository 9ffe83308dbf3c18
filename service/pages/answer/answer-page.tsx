import { type FormView, NumberField, ProblemList } from "../forms/fields.tsx";
import { answerPage } from "./answer-frame.tsx";
import type { AskedDeed, OpenAnswer } from "./open-answer.ts";

/** Asks for confirmation, or says what is noted. Looking at it changes nothing. */
export function answerText(answer: OpenAnswer, form: Pick<FormView, "typed" | "problems">): string {
  const { claims, words, plan, deeds } = answer;
  const { say } = words;
  const title = say(`answer.${claims.purpose}.title`);
  const openCount = deeds.filter((asked) => isToAnswer(asked, answer)).length;
  return answerPage({
    words,
    title,
    children: (
      <>
        <h1>{title}</h1>
        <p class="lead">
          {openCount === 0
            ? say("answer.all-noted", { forDay: plan.forDay })
            : say(`answer.${claims.purpose}.lead`, { forDay: plan.forDay, deedCount: openCount })}
        </p>
        <form method="post">
          {claims.purpose === "log" && <ProblemList form={{ ...form, words }} />}
          <ol class="deeds">
            {deeds.map((asked, index) => (
              <li class="deed">
                <div class="deed-text">
                  <p class="deed-head">{asked.deed.sentence}</p>
                  {asked.deed.notes.map((note) => (
                    <p class="deed-note">{note}</p>
                  ))}
                  {asked.state !== "open" && <p class="ticked">{say(`answer.noted.${asked.state}`)}</p>}
                  {claims.purpose === "log" && isToAnswer(asked, answer) && (
                    <LogFields asked={asked} index={index} form={{ ...form, words }} />
                  )}
                </div>
              </li>
            ))}
          </ol>
          {openCount > 0 && (
            <button type="submit">{say(`answer.${claims.purpose}.keep`, { deedCount: openCount })}</button>
          )}
        </form>
      </>
    ),
  });
}

/** Whether the answer would still add something. */
export function isToAnswer({ state }: AskedDeed, { claims }: OpenAnswer): boolean {
  return claims.purpose === "not-today" ? state === "open" : state !== "done";
}

/** Deeds whose amount can be told. */
export function isWatering({ deed: { action } }: AskedDeed): boolean {
  return action === "water" || action === "soak-slowly";
}

function LogFields({ asked, index, form }: { asked: AskedDeed; index: number; form: FormView }) {
  const { say } = form.words;
  const { amountMl, untilItRunsThrough } = asked.deed;
  const planned = amountMl === null || untilItRunsThrough ? "" : String(Math.round(amountMl));
  const typed = { [`waterMl.${index}`]: planned, ...form.typed };
  return (
    <>
      <label class="choice">
        <input type="checkbox" name={`done.${index}`} value="1" />
        <span>{say("answer.done")}</span>
      </label>
      {isWatering(asked) && (
        <NumberField
          form={{ ...form, typed }}
          name={`waterMl.${index}`}
          label={say("field.waterMl")}
          unit="ml"
          hint={say("hint.waterMl")}
        />
      )}
    </>
  );
}
