import type { Delivery } from "../../notify/channel.ts";
import { messageFaultOf } from "../../notify/message-fault.ts";
import { MESSAGE_KINDS, type StoredChannel } from "../../store/person.ts";
import type { Words } from "../../words/words.ts";
import { shownAddress } from "./shown-address.ts";

export interface ChannelProps {
  readonly stored: StoredChannel;
  readonly words: Words;
  /** How the test just sent went; null where none was. */
  readonly tested: Delivery | null;
  /** Address of the house as others reach it; null where nobody said. */
  readonly publicUrl: string | null;
}

/** One way to a person: what it is, what comes by it, a test, and the door out. */
export function ChannelPart({ stored, words, tested, publicUrl }: ChannelProps) {
  const { say } = words;
  const address = `/people/${stored.personId}/channels/${stored.id}`;
  return (
    <section class="channel">
      <h3>{say(`channel.${stored.kind}`)}</h3>
      <p class="channel-address">{shownAddress(stored, publicUrl)}</p>
      {stored.kind === "webhook" && (
        <p class="hint">{say("channel.webhook.secret", { secret: stored.secret })}</p>
      )}
      {stored.kind === "calendar" ? (
        <Button action={`${address}/renew`} text={say("channel.renew")} />
      ) : (
        <>
          <KindsForm stored={stored} words={words} action={address} />
          <TestButton way={stored.id} backTo={stored.personId} words={words} />
        </>
      )}
      <TestResult tested={tested} words={words} />
      <Button action={`${address}/remove`} text={say("channel.remove")} />
    </section>
  );
}

function KindsForm({ stored, words, action }: { stored: StoredChannel; words: Words; action: string }) {
  const { say } = words;
  return (
    <form method="post" action={action}>
      <fieldset class="field">
        <legend>{say("channel.kinds")}</legend>
        <div class="choices">
          {MESSAGE_KINDS.map((kind) => (
            <label class="choice">
              <input type="checkbox" name="kinds" value={kind} checked={stored.kinds.includes(kind)} />
              <span>{say(`message-kind.${kind}`)}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <button type="submit" class="quiet">
        {say("channel.keep-kinds")}
      </button>
    </form>
  );
}

/** A form of its own, so that the test goes by the way as it is kept. */
export function TestButton({ way, backTo, words }: { way: string; backTo: string; words: Words }) {
  return (
    <form method="post" action="/people/test">
      <input type="hidden" name="way" value={way} />
      <input type="hidden" name="person" value={backTo} />
      <button type="submit" class="quiet">
        {words.say("channel.test")}
      </button>
    </form>
  );
}

/** How a test went, and what to do where it did not. */
export function TestResult({ tested, words }: { tested: Delivery | null; words: Words }) {
  if (tested === null) return null;
  if (tested.ok) return <p role="status">{words.say("channel.test-sent")}</p>;
  return (
    <p class="amiss" role="alert">
      {words.say("channel.test-failed")} {words.say(`fault.${messageFaultOf(tested.fault)}`)}
    </p>
  );
}

function Button({ action, text }: { action: string; text: string }) {
  return (
    <form method="post" action={action}>
      <button type="submit" class="quiet">
        {text}
      </button>
    </form>
  );
}
