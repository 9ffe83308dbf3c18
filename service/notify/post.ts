import type { MailSettings } from "../config.ts";
import type { OutgoingRule } from "../outgoing/post-out.ts";
import type { Store } from "../store/open-store.ts";
import { MESSAGE_KINDS, type Person, type StoredChannel } from "../store/person.ts";
import type { Words } from "../words/words.ts";
import { wordsFor } from "../words/words.ts";
import type { Channel } from "./channel.ts";
import { logChannel } from "./log-channel.ts";
import { type MailLine, mailChannel, mailLine, mailName } from "./mail-channel.ts";
import { type PushLine, pushChannel } from "./push-channel.ts";
import { pushKeys } from "./push-keys.ts";
import { signedLink } from "./signed-link.ts";
import type { Way } from "./way.ts";
import { webhookChannel } from "./webhook-channel.ts";

/** What links in messages are made with. */
export interface Signing {
  readonly key: Buffer;
  /** Under which the house is reached from outside, without a slash at its end; null where nobody said. */
  readonly publicUrl: string | null;
}

/** Every way by which messages go out. */
export interface Post {
  readonly signing: Signing;
  /** By which browsers subscribe to this house's notifications. */
  readonly pushKey: string;
  /** As they are set now: in the environment, and by the people of the house. */
  ways(): Promise<readonly Way[]>;
  close(): void;
}

export interface PostInput {
  readonly store: Store;
  /** Of the house; people have their own. */
  readonly words: Words;
  readonly mail: MailSettings | null;
  readonly publicUrl: string | null;
  /** The message broker, where there is one. */
  readonly broker?: Channel | null;
  /** Which hosts may be called. */
  readonly outgoing: OutgoingRule;
  readonly now: () => number;
  /** Where briefs are printed when there is no other way. */
  write(text: string): void;
}

/** Ways set in the environment answer for the house, not for a person. */
export const HOUSE_PERSON = "house";
const EVERYTHING = new Set(MESSAGE_KINDS);
const OF_THE_DAY = new Set(["morning", "amendment"] as const);

export function openPost(input: PostInput): Post {
  const { store, words, mail, publicUrl } = input;
  const line = mail ? mailLine(mail) : null;
  const signing = { key: store.house.linkKey, publicUrl };
  const { outgoing: rule, now, broker } = input;
  const keys = () => pushKeys(store.house);
  const push = { keys, contact: contactOf(input), rule, now };
  const houseWay = (channel: Channel): Way => ({
    channel,
    words,
    personId: HOUSE_PERSON,
    kinds: EVERYTHING,
    quiet: null,
  });
  const printed = houseWay(logChannel(input.write));
  return {
    signing,
    get pushKey() {
      return keys().publicKey;
    },
    async ways() {
      const people = new Map((await store.people.list()).map((person) => [person.id, person]));
      const stored = (await store.channels.list()).flatMap((channel) => {
        const person = people.get(channel.personId);
        return person ? wayOf(channel, { person, line, signing, push }) : [];
      });
      const taken = new Set(stored.map(({ channel }) => channel.to?.toLowerCase()));
      const ofHouse = (mail?.to ?? [])
        .filter((to) => !taken.has(to.toLowerCase()))
        .map((to) => houseWay(mailChannel(line, { name: mailName(to), to, stopAddress: null })));
      const toPeople = [...ofHouse, ...stored];
      const toPrograms = broker ? [{ ...houseWay(broker), kinds: OF_THE_DAY }] : [];
      return [...(toPeople.length === 0 ? [printed] : toPeople), ...toPrograms];
    },
    close: () => line?.close(),
  };
}

interface WayParts {
  readonly person: Person;
  readonly line: MailLine | null;
  readonly signing: Signing;
  readonly push: PushLine;
}

/** Notification services want somebody to write to when something goes wrong; nobody's own address is made up. */
function contactOf({ publicUrl, mail }: PostInput): string {
  if (publicUrl?.startsWith("https:")) return new URL(publicUrl).origin;
  const address = /<([^>]+)>/.exec(mail?.from ?? "")?.[1] ?? mail?.from;
  return address ? `mailto:${address}` : "https://leebench.invalid";
}

/** The way that a kept channel stands for; none for what is fetched and not sent. */
function wayOf(stored: StoredChannel, parts: WayParts): Way[] {
  const channel = channelOf(stored, parts);
  if (channel === null) return [];
  const { person } = parts;
  return [
    {
      channel,
      personId: person.id,
      words: wordsFor(person.locale, person.units),
      kinds: new Set(stored.kinds),
      quiet: person.quiet,
    },
  ];
}

function channelOf(stored: StoredChannel, { line, signing, push }: WayParts): Channel | null {
  switch (stored.kind) {
    case "mail":
      return mailChannel(line, {
        name: stored.id,
        to: stored.address,
        stopAddress: stopAddress(stored.id, signing),
      });
    case "push":
      return pushChannel(stored, push);
    case "webhook":
      return webhookChannel(stored, push);
    case "calendar":
      return null;
  }
}

function stopAddress(channelId: string, { key, publicUrl }: Signing): string | null {
  return publicUrl === null
    ? null
    : `${publicUrl}/stop-mail/${signedLink({ purpose: "stop-mail", channelId }, key)}`;
}
