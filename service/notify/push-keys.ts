import { createRequire } from "node:module";
import { z } from "zod";
import type { HouseValues } from "../store/house-values.ts";

const KeysSchema = z.object({ publicKey: z.string(), privateKey: z.string() });
export type PushKeys = z.output<typeof KeysSchema>;

type WebPush = Pick<typeof import("web-push"), "generateVAPIDKeys" | "generateRequestDetails">;

/** Read when a notification is first at hand: most starts need none, and it brings forty modules with it. */
export const webPush = (): WebPush => createRequire(import.meta.url)("web-push") as WebPush;

/** The house's own pair by which notification services know it (RFC 8292), made at its first start. */
export function pushKeys(house: HouseValues): PushKeys {
  return KeysSchema.parse(
    JSON.parse(house.kept("push-keys", () => JSON.stringify(webPush().generateVAPIDKeys()))),
  );
}
