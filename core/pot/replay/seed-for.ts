import { seedFrom } from "../../weather/seeded-random.ts";
import type { ReplayContext } from "./replay-context.ts";

/** A seed of its own for each pot and purpose, which no other pot or entry shifts. */
export function seedFor(
  context: Pick<ReplayContext, "pot" | "settings">,
  purpose: string,
  number = 0,
): number {
  return seedFrom([context.settings.seed, textNumber(context.pot.id), textNumber(purpose), number % 2 ** 31]);
}

/** A whole number from a text (FNV-1a). */
function textNumber(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash;
}
