import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Brief } from "../brief/brief-value.ts";
import type { MessageKind } from "../store/person.ts";
import type { Words } from "../words/words.ts";
import type { AnswerLinks } from "./answer-links.ts";

/** A message before it is dressed for its way. */
export interface MessageContent {
  readonly id: string;
  readonly kind: MessageKind | "test";
  readonly subject: string;
  readonly text: string;
  readonly words: Words;
  /** The day's brief with what it was made of; null where the message is about something else. */
  readonly about: { readonly brief: Brief; readonly plan: Plan; readonly collection: Collection } | null;
  readonly houseId: string;
  /** By which it can be answered; null where it cannot. */
  readonly links: AnswerLinks | null;
}
