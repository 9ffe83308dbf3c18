import type { Message } from "../store/outbox-store.ts";

export type Delivery = { readonly ok: true } | { readonly ok: false; readonly fault: string };

/** One way to reach the grower. Repeating a delivery must be harmless as far as the way itself allows. */
export interface Channel {
  readonly name: string;
  deliver(message: Message): Promise<Delivery>;
  close?(): void;
}
