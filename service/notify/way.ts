import type { Handover } from "../store/handover.ts";
import type { MessageKind, QuietHours } from "../store/person.ts";
import type { Words } from "../words/words.ts";
import type { Channel } from "./channel.ts";

/** A channel with whom it reaches, in which words, about what and when. */
export interface Way {
  readonly channel: Channel;
  /** Whose answers come back by its links; the house itself where the way is set in the environment. */
  readonly personId: string;
  readonly words: Words;
  readonly kinds: ReadonlySet<MessageKind>;
  readonly quiet: QuietHours | null;
  /** No message on a morning that asks for nothing. */
  readonly skipsEmpty?: boolean;
  /** Set while this person looks after the pots of another. */
  readonly cover?: Handover;
}
