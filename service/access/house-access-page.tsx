import { ProblemList, TextField } from "../pages/forms/fields.tsx";
import { Frame } from "../pages/frame.tsx";
import type { Account } from "../store/accounts-store.ts";
import type { Session } from "../store/sessions-store.ts";
import type { Words } from "../words/words.ts";
import { accessForm, NameAndRole, type Shown } from "./access-form.tsx";
import type { AccessInput } from "./access-input.ts";
import { dayText } from "./day-text.ts";
import { deviceName } from "./device-name.ts";
import { OWNER_ID } from "./door.ts";
import { TokensPart } from "./tokens-part.tsx";
import type { Visitor } from "./visitor.ts";

interface HouseAccess {
  readonly input: AccessInput;
  readonly visitor: Visitor;
  readonly shown: Partial<Shown>;
}

/** Who may come in: own devices and passphrase for everybody, people and tokens for the owner. */
export async function HouseAccessPage({ input, visitor, shown }: HouseAccess) {
  const { words, demo, store } = input.context;
  const { say } = words;
  const [site] = await store.sites.list();
  const sessions = visitor.kind === "session" ? await store.sessions.ofAccount(visitor.accountId) : [];
  const people = (await store.accounts.list()).filter(({ id }) => id !== OWNER_ID);
  const tokens = await store.tokens.list();
  return (
    <Frame words={words} title={say("access.title")} here="/house" siteName={site?.name} demo={demo}>
      <h1>{say("access.title")}</h1>
      {visitor.kind === "open" && (
        <p class="lead">
          {say("access.open")} <a href="/claim">{say("access.choose")}</a>
        </p>
      )}
      {visitor.kind === "session" && (
        <>
          <OwnPart {...{ words, visitor, sessions }} />
          <PassphrasePart words={words} shown={shown} />
        </>
      )}
      {visitor.role === "owner" && visitor.kind !== "open" && (
        <>
          <PeoplePart words={words} people={people} shown={shown} />
          <TokensPart words={words} tokens={tokens} shown={shown} nowUtcMs={input.context.now()} />
        </>
      )}
    </Frame>
  );
}

function OwnPart(props: {
  words: Words;
  visitor: Extract<Visitor, { kind: "session" }>;
  sessions: readonly Session[];
}) {
  const { words, visitor, sessions } = props;
  const { say } = words;
  return (
    <section class="access">
      <p class="lead">{say("access.you", { name: visitor.name, role: say(`role.${visitor.role}`) })}</p>
      <form method="post" action="/sign-out" class="own">
        <button type="submit">{say("access.sign-out")}</button>
      </form>
      <h2>{say("access.devices")}</h2>
      <ul class="plain">
        {sessions.map(({ digest, device, createdUtcMs }) => (
          <li>
            {say("access.device", { device: deviceName(device), onDay: dayText(createdUtcMs) })}
            {digest === visitor.digest && ` ${say("access.this-device")}`}
          </li>
        ))}
      </ul>
      <form method="post" action="/house/access/sign-out-everywhere" class="own">
        <button type="submit" class="quiet">
          {say("access.sign-out-everywhere")}
        </button>
      </form>
    </section>
  );
}

function PassphrasePart({ words, shown }: { words: Words; shown: Partial<Shown> }) {
  const { say } = words;
  const form = accessForm("passphrase", { shown, words });
  return (
    <section class="access">
      <h2>{say("access.passphrase")}</h2>
      <form method="post" action="/house/access/passphrase" class="own">
        <ProblemList form={form} labels={{ fresh: say("field.new-passphrase") }} />
        <TextField form={form} name="passphrase" type="password" label={say("field.passphrase")} />
        <TextField
          form={form}
          name="fresh"
          type="password"
          label={say("field.new-passphrase")}
          autocomplete="new-password"
        />
        <button type="submit">{say("access.change")}</button>
      </form>
    </section>
  );
}

function PeoplePart(props: { words: Words; people: readonly Account[]; shown: Partial<Shown> }) {
  const { words, people, shown } = props;
  const { say } = words;
  const form = accessForm("people", { shown, words, begins: { mayDo: "helper" } });
  return (
    <section class="access">
      <h2>{say("access.people")}</h2>
      {shown.code !== undefined && (
        <p role="status">
          {say("access.code", { name: shown.codeFor ?? "" })} <strong>{shown.code}</strong>
        </p>
      )}
      <ul class="plain">
        {people.map((person) => (
          <PersonRow words={words} person={person} />
        ))}
      </ul>
      <form method="post" action="/house/access/people">
        <ProblemList form={form} labels={{ name: say("field.person-name") }} />
        <NameAndRole form={form} label={say("field.person-name")} roles={["helper", "viewer"]} />
        <button type="submit">{say("access.add-person")}</button>
      </form>
    </section>
  );
}

function PersonRow({ words: { say }, person }: { words: Words; person: Account }) {
  const { id, name, role, passphrase } = person;
  return (
    <li>
      <p>
        {say(passphrase === null ? "access.person-waiting" : "access.person", {
          name,
          role: say(`role.${role}`),
        })}
      </p>
      <form method="post" action={`/house/access/people/${encodeURIComponent(id)}`}>
        {(["code", "sign-out", "remove"] as const).map((deed) => (
          <button
            type="submit"
            name="do"
            value={deed}
            class="quiet"
            aria-label={say(`access.deed-label.${deed}`, { name })}
          >
            {say(`access.deed.${deed}`)}
          </button>
        ))}
      </form>
    </li>
  );
}
