import { z } from "zod";
import type { Mix, PorosityTest } from "../../../core/mix/mix.ts";
import { porosityTestByScale } from "../../../core/mix/porosity-by-scale.ts";
import { porosityOf, porosityTestProblems } from "../../../core/mix/porosity-test.ts";
import type { Problem } from "../../../core/problem.ts";
import type { Words } from "../../words/words.ts";
import { TestStep } from "../drawing/test-step.tsx";
import { type FormView, NumberField, ProblemList, RadioField } from "../forms/fields.tsx";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { maybeNumber, neededNumber } from "../forms/typed-fields.ts";

const ml = () => neededNumber({ from: 0, to: 1_000_000 });
const kg = () => neededNumber({ from: 0, to: 1000 });
const ByJug = z.object({
  potMl: ml(),
  addedMl: ml(),
  drainedMl: ml(),
  heldBeforeMl: maybeNumber({ from: 0, to: 1_000_000 }),
});
const ByScale = z.object({
  potMl: ml(),
  filledKg: kg(),
  soakedKg: kg(),
  testDrainedKg: kg(),
  heldBeforeMl: maybeNumber({ from: 0, to: 1_000_000 }),
});

type TestRead = { ok: true; value: PorosityTest } | { ok: false; problems: readonly Problem[] };

/** The grower's test as typed, by jug or by kitchen scale; one that cannot be right is explained. */
export function testOfForm(typed: Typed): TestRead {
  return typed.by === "scale" ? testByScale(typed) : testByJug(typed);
}

function testByJug(typed: Typed): TestRead {
  const read = readForm(ByJug, typed);
  if (!read.ok) return read;
  const { heldBeforeMl, ...rest } = read.value;
  const test = { ...rest, ...(heldBeforeMl === undefined ? {} : { heldBeforeMl }) };
  const problems = porosityTestProblems(test);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: test };
}

/** Its drained weight has a field name of its own, since the form also asks for what drained by jug. */
function testByScale(typed: Typed): TestRead {
  const read = readForm(ByScale, typed);
  if (!read.ok) return read;
  const { heldBeforeMl, testDrainedKg, ...rest } = read.value;
  const outcome = porosityTestByScale({
    ...rest,
    drainedKg: testDrainedKg,
    ...(heldBeforeMl === undefined ? {} : { heldBeforeMl }),
  });
  if (outcome.ok) return outcome;
  return {
    ok: false,
    problems: outcome.problems.map((problem) =>
      problem.path[0] === "drainedKg" ? { ...problem, path: ["testDrainedKg"] } : problem,
    ),
  };
}

/** Fill, soak, drain, measure: each step drawn, and the form for what came out. */
export function TestPage({ mix, form, formId }: { mix: Mix; form: FormView; formId: string }) {
  const { words } = form;
  const { say } = words;
  return (
    <>
      <h1>{say("test.title", { mix: mix.name })}</h1>
      <p class="lead">{say("test.lead")}</p>
      <p class="deed-note">{say("mix.dust")}</p>
      {mix.test && <Result test={mix.test} words={words} />}
      <ol class="steps">
        {(["fill", "soak", "drain", "measure"] as const).map((step) => (
          <li>
            <TestStep step={step} label={say(`test.${step}`)} />
            <p>{say(`test.${step}`)}</p>
          </li>
        ))}
      </ol>
      <form method="post" action={`/mixes/${encodeURIComponent(mix.id)}/test`}>
        <ProblemList form={form} />
        <input type="hidden" name="formId" value={formId} />
        <NumberField form={form} name="potMl" label={say("field.potMl")} unit="ml" hint={say("hint.potMl")} />
        <RadioField
          form={form}
          name="by"
          label={say("field.by")}
          options={[
            { value: "jug", text: say("test.by-jug") },
            { value: "scale", text: say("test.by-scale") },
          ]}
        />
        <fieldset class="group">
          <legend>{say("test.by-jug")}</legend>
          <div class="row">
            <NumberField form={form} name="addedMl" label={say("field.addedMl")} unit="ml" />
            <NumberField form={form} name="drainedMl" label={say("field.drainedMl")} unit="ml" />
          </div>
        </fieldset>
        <fieldset class="group">
          <legend>{say("test.by-scale")}</legend>
          <div class="row">
            <NumberField form={form} name="filledKg" label={say("field.filledKg")} unit="kg" />
            <NumberField form={form} name="soakedKg" label={say("field.soakedKg")} unit="kg" />
            <NumberField form={form} name="testDrainedKg" label={say("field.testDrainedKg")} unit="kg" />
          </div>
        </fieldset>
        <NumberField
          form={form}
          name="heldBeforeMl"
          label={say("field.heldBeforeMl")}
          unit="ml"
          hint={say("hint.heldBeforeMl")}
        />
        <button type="submit">{say("test.keep")}</button>
      </form>
    </>
  );
}

function Result({ test, words }: { test: PorosityTest; words: Words }) {
  const { totalPorosityFrac, airSpaceFrac, capacityFrac } = porosityOf(test);
  return (
    <p class="deed-note">{words.say("test.result", { totalPorosityFrac, airSpaceFrac, capacityFrac })}</p>
  );
}
