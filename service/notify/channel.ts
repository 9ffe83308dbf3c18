import type { Message } from "../store/outbox-store.ts";
import type { MessageContent } from "./message-content.ts";

export type Delivery =
  | { readonly ok: true }
  | {
      readonly ok: false;
      readonly fault: string;
      /** Trying again would bring the same answer. */
      readonly final?: boolean;
      /** Whoever it led to has closed it: it is taken away. */
      readonly gone?: boolean;
    };

/** What a way is called, in the store and to the grower. */
export interface NamedChannel {
  readonly name: string;
  /** The address it leads to, as far as it may be shown; absent where there is none. */
  readonly to?: string;
  /** How it is spoken of; a printed log when left out and without address, mail when left out. */
  readonly sort?: ChannelSort;
}

export type ChannelSort = "log" | "mail" | "push" | "webhook" | "mqtt";

/** One way to reach the grower. Repeating a delivery must be harmless as far as the way itself allows. */
export interface Channel extends NamedChannel {
  deliver(message: Message): Promise<Delivery>;
  /** What a message needs for this way besides its text, as JSON; kept with it, so that a repeat brings the same. */
  extraOf?(content: MessageContent): string | null;
  close?(): void;
}
