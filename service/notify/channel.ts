import type { Message } from "../store/outbox-store.ts";

export type Delivery = { readonly ok: true } | { readonly ok: false; readonly fault: string };

/** What a way is called, in the store and to the grower. */
export interface NamedChannel {
  readonly name: string;
  /** The address it leads to; absent where there is none to show. */
  readonly to?: string;
}

/** One way to reach the grower. Repeating a delivery must be harmless as far as the way itself allows. */
export interface Channel extends NamedChannel {
  deliver(message: Message): Promise<Delivery>;
  close?(): void;
}
