import { createHash } from "node:crypto";

/**
 * The one name of a message: same house, plan and channel, same name, whenever and however often it is made. It holds
 * nothing that tells where or whose the house is.
 */
export function messageId(parts: {
  readonly houseId: string;
  readonly siteId: string;
  readonly forDay: string;
  readonly kind: string;
  readonly channel: string;
}): string {
  const { houseId, siteId, forDay, kind, channel } = parts;
  const text = JSON.stringify([houseId, siteId, forDay, kind, channel]);
  const digest = createHash("sha256").update(text).digest("hex").slice(0, 24);
  return `${forDay}.${kind}.${channel}.${digest}`;
}
