import { type Context, Hono } from "hono";
import { z } from "zod";
import { type ChoiceParts, choiceOfParts, OWN_NUMERALS, partsOfChoice } from "../../words/choice-parts.ts";
import type { MessageKey } from "../../words/en.ts";
import { LANGUAGES, ownNameOf } from "../../words/languages.ts";
import { type Words, wordsFor } from "../../words/words.ts";
import { type FormView, RadioField } from "../forms/fields.tsx";
import { typedForm } from "../forms/form-body.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { choice } from "../forms/typed-fields.ts";
import { Frame, pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { siteNow } from "../site-now.ts";

/** Fields of a choice of words, as typed. */
export const WordsForm = z.object({
  language: choice(LANGUAGES as [ChoiceParts["language"], ...ChoiceParts["language"][]]),
  numerals: choice(["usual", "latn", "beng", "deva"]),
  clock: choice(["usual", "h12", "h23"]),
  units: choice(["metric", "us"]),
});

const ADDRESS = "/house/words";

/** Language, numerals, hours and measures of the house; open before there is a place, for whoever reads no English. */
export function wordsRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get(ADDRESS, async (c) => {
    const { language, numerals, clock, units } = partsOfChoice(context.words.choice);
    return c.html(await page(context, { typed: { language, numerals, clock, units }, problems: [] }));
  });
  routes.post(ADDRESS, (c) => keepChoice(c, context));
  return routes;
}

async function keepChoice(c: Context, context: PageContext) {
  const typed = await typedForm(c);
  const read = readForm(WordsForm, typed);
  if (!read.ok) return c.html(await page(context, { typed, problems: read.problems }), 422);
  const chosen = choiceOfParts(read.value, context.words.choice);
  await context.store.choices.putWordChoice(chosen);
  context.words.choose(chosen);
  return c.redirect((await siteNow(context)) ? "/house" : "/begin", 303);
}

async function page(context: PageContext, given: Pick<FormView, "typed" | "problems">): Promise<string> {
  const { words, demo } = context;
  const { say } = words;
  const now = await siteNow(context);
  return pageText(
    <Frame words={words} title={say("house.words")} here={ADDRESS} siteName={now?.site.name} demo={demo}>
      <h1>{say("house.words")}</h1>
      <p class="lead">{say("house.words-text")}</p>
      <WordsFields form={{ ...given, words }} />
    </Frame>,
  );
}

function WordsFields({ form }: { form: FormView }) {
  return (
    <form method="post" action={ADDRESS}>
      <WordChoiceFields form={form} />
      <button type="submit">{form.words.say("house.keep-words")}</button>
    </form>
  );
}

/** Language, numerals, hours and measures, all in sight. */
export function WordChoiceFields({ form }: { form: FormView }) {
  const { say } = form.words;
  const options = (keys: readonly MessageKey[]) =>
    keys.map((key) => ({ value: key.split(".")[1] ?? "", text: say(key) }));
  return (
    <>
      <RadioField
        form={form}
        name="language"
        label={say("field.language")}
        options={LANGUAGES.map((language) => ({ value: language, text: ownNameOf(language) }))}
      />
      <RadioField
        form={form}
        name="numerals"
        label={say("field.numerals")}
        options={[...options(["numerals.usual"]), ...numeralOptions(form.typed, form.words)]}
      />
      <RadioField
        form={form}
        name="clock"
        label={say("field.clock")}
        options={options(["clock.usual", "clock.h23", "clock.h12"])}
      />
      <RadioField
        form={form}
        name="units"
        label={say("field.units")}
        options={options(["measures.metric", "measures.us"])}
      />
    </>
  );
}

const SOME_NUMBER = 1_234_567_890;

/** Each kind of numerals by how it looks; only those that a language of the house is written with. */
function numeralOptions({ language = "" }: Typed, { units }: Words) {
  const own = OWN_NUMERALS[language as keyof typeof OWN_NUMERALS];
  return ["latn", ...(own ? [own] : Object.values(OWN_NUMERALS))].map((value) => ({
    value,
    text: wordsFor(`en-u-nu-${value}`, units).number(SOME_NUMBER),
  }));
}
