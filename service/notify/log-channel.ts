import type { Channel } from "./channel.ts";

/** Prints messages whole, for a house without mail. */
export function logChannel(write: (text: string) => void): Channel {
  return {
    name: "log",
    async deliver(message) {
      write(`${message.body.trimEnd()}\n\n`);
      return { ok: true };
    },
  };
}
