import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openStore } from "../../../service/store/open-store.ts";
import type { Person, StoredChannel } from "../../../service/store/person.ts";
import { emptyStore, tempFolder } from "./test-store.ts";

const ANN: Person = { id: "ann", name: "Ann", locale: "en-GB-u-hc-h12", units: "us", quiet: null };
const MAIL: StoredChannel = {
  id: "mail-0123456789ab",
  personId: "ann",
  kind: "mail",
  kinds: ["morning"],
  address: "ann@host.example",
};

describe("people and the ways to them", () => {
  it("come back as they were put, the later one in place of the earlier", async () => {
    const store = await emptyStore();
    await store.people.put(ANN);
    await store.people.put({ ...ANN, quiet: { fromHour: 21.5, toHour: 6 } });
    await store.channels.put(MAIL);
    await store.channels.put({ ...MAIL, kinds: ["morning", "weekly"] });
    expect(await store.people.list()).toEqual([{ ...ANN, quiet: { fromHour: 21.5, toHour: 6 } }]);
    expect(await store.channels.get(MAIL.id)).toEqual({ ...MAIL, kinds: ["morning", "weekly"] });
  });

  it("go together: whoever is removed gets nothing more by any way", async () => {
    const store = await emptyStore();
    await store.people.put(ANN);
    await store.channels.put(MAIL);
    await store.people.remove("ann");
    expect(await store.channels.list()).toEqual([]);
    expect(await store.people.get("ann")).toBeNull();
  });

  it("are refused where they are not of the shape", async () => {
    const store = await emptyStore();
    await store.people.put(ANN);
    await expect(store.channels.put({ ...MAIL, id: "ann@host.example" })).rejects.toThrow();
    await expect(store.channels.put({ ...MAIL, personId: "nobody" })).rejects.toThrow();
  });
});

describe("what a house made for itself", () => {
  it("is made once and is the same after every start", async () => {
    const file = join(tempFolder(), "a.db");
    const first = await openStore(file);
    const key = first.house.linkKey.toString("hex");
    const kept = first.house.kept("push-keys", () => "made at first");
    await first.close();
    const second = await openStore(file);
    expect(second.houseId).toBe(first.houseId);
    expect(second.house.linkKey.toString("hex")).toBe(key);
    expect(second.house.linkKey).toHaveLength(32);
    expect(second.house.kept("push-keys", () => "made anew")).toBe(kept);
    await second.close();
  });
});
