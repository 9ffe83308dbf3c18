import type { Delivery } from "../../notify/channel.ts";
import type { Person, StoredChannel } from "../../store/person.ts";
import type { Words } from "../../words/words.ts";
import { type FormView, ProblemList, TextField } from "../forms/fields.tsx";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import type { SiteNow } from "../site-now.ts";
import { ChannelPart } from "./channel-part.tsx";
import { PersonFields, typedOfPerson } from "./person-form.tsx";

export interface PersonAsked {
  /** The form that was sent and could not be kept: the person, or a new way of that kind. */
  readonly form: "person" | "mail" | "webhook" | null;
  readonly view: Pick<FormView, "typed" | "problems">;
  /** The way by which a test was sent, and how it went. */
  readonly tested: { readonly way: string; readonly delivery: Delivery } | null;
}

export const NOTHING_ASKED: PersonAsked = { form: null, view: { typed: {}, problems: [] }, tested: null };

/** One person: who, how spoken to, and by which ways. */
export async function personPage(
  context: PageContext,
  { now, person, asked }: { now: SiteNow; person: Person; asked: PersonAsked },
): Promise<string> {
  const { words, store, post } = context;
  const { say } = words;
  const channels = (await store.channels.list()).filter(({ personId }) => personId === person.id);
  const viewOf = (form: PersonAsked["form"], typed = {}): FormView => ({
    ...(asked.form === form ? asked.view : { typed, problems: [] }),
    words,
    prefix: `${form}-`,
  });
  return pageText(
    <SiteFrame context={context} now={now} title={person.name} here="/house">
      <p>
        <a href="/people">{say("people.title")}</a>
      </p>
      <h1>{person.name}</h1>
      <section>
        <h2>{say("people.ways")}</h2>
        {channels.length === 0 && <p>{say("people.no-ways")}</p>}
        {channels.map((stored) => (
          <ChannelPart
            stored={stored}
            words={words}
            publicUrl={post.signing.publicUrl}
            tested={asked.tested?.way === stored.id ? asked.tested.delivery : null}
          />
        ))}
        {lostTest(asked, channels) && <p class="amiss">{say("fault.push-gone")}</p>}
        <h3>{say("people.add-way")}</h3>
        <NewWays
          person={person}
          words={words}
          post={post}
          viewOf={viewOf}
          hasCalendar={channels.some(({ kind }) => kind === "calendar")}
        />
      </section>
      <section>
        <h2>{say("people.who")}</h2>
        <PersonFields form={viewOf("person", typedOfPerson(person))} action={`/people/${person.id}`} />
        <form method="post" action={`/people/${person.id}/remove`}>
          <button type="submit" class="quiet">
            {say("people.remove", { name: person.name })}
          </button>
        </form>
      </section>
    </SiteFrame>,
  );
}

/** The test found the way closed, so that it no longer stands in the list. */
function lostTest({ tested }: PersonAsked, channels: readonly StoredChannel[]): boolean {
  return tested !== null && channels.every(({ id }) => id !== tested.way);
}

function NewWays({
  person,
  words,
  post,
  viewOf,
  hasCalendar,
}: {
  person: Person;
  words: Words;
  post: PageContext["post"];
  viewOf: (form: PersonAsked["form"]) => FormView;
  hasCalendar: boolean;
}) {
  const { say } = words;
  const action = `/people/${person.id}/channels`;
  return (
    <>
      <form method="post" action={action}>
        <ProblemList form={viewOf("mail")} />
        <input type="hidden" name="kind" value="mail" />
        <TextField form={viewOf("mail")} name="address" label={say("field.address")} />
        <button type="submit">{say("channel.add.mail")}</button>
      </form>
      <form
        method="post"
        action={action}
        class="push-form"
        hidden
        data-key={post.pushKey}
        data-person={person.id}
      >
        <p class="hint">{say("channel.push.hint")}</p>
        <button type="submit">{say("channel.add.push")}</button>
        <p class="push-refused amiss" hidden>
          {say("channel.push.refused")}
        </p>
      </form>
      <noscript>
        <p class="hint">{say("channel.push.no-script")}</p>
      </noscript>
      {!hasCalendar && (
        <form method="post" action={action}>
          <input type="hidden" name="kind" value="calendar" />
          <p class="hint">{say("channel.calendar.hint")}</p>
          <button type="submit">{say("channel.add.calendar")}</button>
        </form>
      )}
      <form method="post" action={action}>
        <ProblemList form={viewOf("webhook")} />
        <input type="hidden" name="kind" value="webhook" />
        <TextField
          form={viewOf("webhook")}
          name="url"
          label={say("field.url")}
          hint={say("channel.webhook.hint")}
        />
        <button type="submit">{say("channel.add.webhook")}</button>
      </form>
      {post.signing.publicUrl === null && <p class="hint">{say("people.no-public-url")}</p>}
    </>
  );
}
