import { HOUSE_PERSON } from "../../notify/post.ts";
import type { Way } from "../../notify/way.ts";
import type { Words } from "../../words/words.ts";
import type { FormView } from "../forms/fields.tsx";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import type { SiteNow } from "../site-now.ts";
import { TestButton, TestResult } from "./channel-part.tsx";
import { newPerson, PersonFields, typedOfPerson } from "./person-form.tsx";
import type { PersonAsked } from "./person-page.tsx";

/** Everybody who gets messages, the ways set in the environment, and a form for one more. */
export async function peoplePage(
  context: PageContext,
  { now, asked }: { now: SiteNow; asked: PersonAsked },
): Promise<string> {
  const { words, store, post } = context;
  const { say } = words;
  const people = await store.people.list();
  const ofHouse = (await post.ways()).filter(({ personId }) => personId === HOUSE_PERSON);
  const view: FormView = {
    ...(asked.form === "person"
      ? asked.view
      : { typed: typedOfPerson(newPerson(words.choice)), problems: [] }),
    words,
  };
  return pageText(
    <SiteFrame context={context} now={now} title={say("people.title")} here="/house">
      <h1>{say("people.title")}</h1>
      <p class="lead">{say(people.length === 0 ? "people.none" : "people.lead")}</p>
      <ul class="plain">
        {people.map((person) => (
          <li>
            <a href={`/people/${person.id}`}>{person.name}</a>
          </li>
        ))}
      </ul>
      <section>
        <h2>{say("people.add")}</h2>
        <PersonFields form={view} action="/people" />
      </section>
      <HouseWays ways={ofHouse} words={words} asked={asked} />
    </SiteFrame>,
  );
}

function HouseWays({ ways, words, asked }: { ways: readonly Way[]; words: Words; asked: PersonAsked }) {
  if (ways.length === 0) return null;
  return (
    <section>
      <h2>{words.say("people.house-ways")}</h2>
      {ways.map(({ channel }) => (
        <section class="channel">
          <p>
            {channel.to === undefined
              ? words.say(channel.sort === "mqtt" ? "status.way.mqtt" : "status.way.log")
              : words.say("status.way.to", { address: channel.to })}
          </p>
          <TestButton way={channel.name} backTo="" words={words} />
          <TestResult
            tested={asked.tested?.way === channel.name ? asked.tested.delivery : null}
            words={words}
          />
        </section>
      ))}
    </section>
  );
}
