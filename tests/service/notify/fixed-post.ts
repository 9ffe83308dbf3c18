import type { Channel } from "../../../service/notify/channel.ts";
import type { Post } from "../../../service/notify/post.ts";
import type { Way } from "../../../service/notify/way.ts";
import { type Words, wordsFor } from "../../../service/words/words.ts";

/** The house's own way by a channel, for what is told of the day. */
export function wayBy(channel: Channel, over: Partial<Way> = {}): Way {
  return {
    channel,
    personId: "house",
    words: wordsFor("en", "metric"),
    kinds: new Set(["morning", "amendment"]),
    quiet: null,
    ...over,
  };
}

/** A post with just these channels, whatever the store holds. */
export function fixedPost(channels: readonly Channel[], words?: Words): Post {
  return {
    signing: { key: Buffer.from("a key of the tests"), publicUrl: null },
    pushKey: "",
    ways: async () => channels.map((channel) => wayBy(channel, words ? { words } : {})),
    close: () => undefined,
  };
}
