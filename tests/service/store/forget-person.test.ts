import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { forgetPerson } from "../../../service/store/forget-person.ts";
import { withoutName } from "../../../service/store/name-in-text.ts";
import { openStore, type Store } from "../../../service/store/open-store.ts";
import { exportAll } from "../../../service/store/transfer.ts";
import { fill, note } from "./bench.ts";
import { emptyStore, tempFolder } from "./test-store.ts";

const NOW = Date.parse("2031-05-04T09:00Z");

async function peopled(store: Store) {
  await fill(store);
  const person = (id: string, name: string) =>
    store.people.put({ id, name, locale: "en-GB", units: "metric", quiet: null });
  await person("p1", "Tovarin");
  await person("p2", "Mirren");
  const way = (id: string, personId: string, address: string) =>
    store.channels.put({ kind: "mail", id, personId, kinds: ["morning"], address });
  await way("mail-00000000000a", "p1", "tovarin@post.example");
  await way("mail-00000000000b", "p2", "mirren@post.example");
  const message = (id: string, channel: string) => ({
    ...{
      id,
      channel,
      siteId: "yard",
      planId: null,
      subject: "s",
      body: `for ${channel}`,
      kind: "morning" as const,
    },
    ...{ createdUtcMs: NOW, keepTryingUntilUtcMs: NOW + 1 },
  });
  await store.outbox.add([message("m1", "mail-00000000000a"), message("m2", "mail-00000000000b")]);
  const account = (id: string, name: string, role: "owner" | "helper") =>
    store.accounts.put({
      id,
      name,
      role,
      passphrase: null,
      codeDigest: null,
      codeEndsUtcMs: null,
      createdUtcMs: NOW,
    });
  await account("a1", "Mirren", "owner");
  await account("a2", "tovarin", "helper");
  const at = { createdUtcMs: NOW, seenUtcMs: NOW };
  await store.sessions.add({ digest: "d", accountId: "a2", stamp: "s", device: "a phone", ...at });
  await store.journal.append("yard", [
    note("n1", "Tovarin watered by hand"),
    note("n2", "Tovarinas are a plant"),
  ]);
}

describe("letting go of a person", () => {
  it("takes ways, messages, sign-in and the name in notes, in the file too, and nothing else", async () => {
    const file = join(tempFolder(), "leebench.db");
    const store = await openStore(file);
    await peopled(store);
    const before = await exportAll(store, NOW);

    const gone = await forgetPerson(store, "Tovarin");

    expect(gone).toEqual({ ok: true, value: { ways: 1, messages: 1, sessions: 1, entries: 1 } });
    expect((await store.people.list()).map(({ name }) => name)).toEqual(["Mirren"]);
    expect((await store.channels.list()).map(({ id }) => id)).toEqual(["mail-00000000000b"]);
    expect((await store.outbox.list("yard")).map(({ id }) => id)).toEqual(["m2"]);
    expect((await store.accounts.list()).map(({ name }) => name)).toEqual(["Mirren"]);
    const after = JSON.stringify(await exportAll(store, NOW));
    expect(after).toBe(JSON.stringify(before).replace("Tovarin watered", "somebody watered"));
    expect(() => store.raw.exec("UPDATE journal SET body = '{}'")).toThrow("the journal only grows");
    await store.close();
    const bytes = readFileSync(file).toString("latin1").replaceAll("Tovarinas", "");
    expect(bytes).toContain("Mirren");
    expect(bytes.toLowerCase()).not.toContain("tovarin");
  });

  it("keeps the owner's sign-in, and says when there is no such person", async () => {
    const store = await emptyStore();
    await peopled(store);
    const codeOf = async (name: string) => {
      const gone = await forgetPerson(store, name);
      return gone.ok ? "gone" : gone.problems[0]?.code;
    };
    expect(await codeOf("Mirren")).toBe("owner-stays");
    expect(await codeOf("Nobody")).toBe("no-such-person");
    expect(await store.people.list()).toHaveLength(2);
    expect(await codeOf("TOVARIN")).toBe("gone");
  });

  it("finds a name in texts only, whole, in corrections too", () => {
    const body = {
      kind: "correction",
      ofEntryId: "Ann",
      body: { kind: "note", text: "Ann, ANN's can; Anna's pot; Joann. (ann)" },
    };
    expect(withoutName(body, "Ann")).toEqual({
      ...body,
      body: { kind: "note", text: "somebody, somebody's can; Anna's pot; Joann. (somebody)" },
    });
    expect(withoutName({ text: "a.b met aXb" }, "a.b")).toEqual({ text: "somebody met aXb" });
  });
});
