import type { StoredChannel } from "../../store/person.ts";

/** Where a way leads, as its owner may see it: of a device its name, of a calendar the address to subscribe to. */
export function shownAddress(stored: StoredChannel, publicUrl: string | null): string {
  switch (stored.kind) {
    case "mail":
      return stored.address;
    case "webhook":
      return stored.url;
    case "push":
      return stored.device;
    case "calendar":
      return `${publicUrl ?? ""}/calendar/${stored.secret}.ics`;
  }
}
