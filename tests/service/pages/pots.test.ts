import { describe, expect, it } from "vitest";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import type { CalendarDay } from "../../../core/site/site.ts";
import { collection as bare, plan } from "../brief/plan-builder.ts";
import { houseOf, NOW_UTC_MS } from "./house-of.ts";

const vessel = { shape: "round", topCm: 30, baseCm: 22, heightCm: 28, material: "unglazed" } as const;
const collection = {
  ...bare,
  mixes: [
    { id: "m", name: "Lean", recipe: { kind: "parts" as const, parts: [{ component: "pumice", parts: 1 }] } },
  ],
};
const journal: JournalEntry[] = [
  {
    id: "planted-lemon",
    potId: "lemon",
    atUtcMs: NOW_UTC_MS - 40 * 86_400_000,
    recordedUtcMs: NOW_UTC_MS - 40 * 86_400_000,
    body: { kind: "planted", vessel, mixId: "m", roots: "undisturbed" },
  },
];
const stock = { collection, plan: plan(), journal };

/** One bench of like pots, each planted. */
function benchOf(potCount: number) {
  const one = collection.pots.find(({ id }) => id === "lemon")!;
  const row = plan().pots.find(({ potId }) => potId === "lemon")!;
  const ids = Array.from({ length: potCount }, (_, index) => `lemon-${100 + index}`);
  return {
    collection: { ...collection, pots: ids.map((id) => ({ ...one, id })) },
    plan: { ...plan(), pots: ids.map((potId) => ({ ...row, potId })) },
    journal: ids.map((potId) => ({ ...journal[0]!, id: `planted-${potId}`, potId })),
  };
}

function wetFor(potPlan: PotPlan, days: number): PotPlan {
  const daysToRefill = { low: days - 0.5, mid: days, high: days + 1 };
  return { ...potPlan, action: "none", outlook: { ...potPlan.outlook, daysToRefill } };
}

describe("what was kept", () => {
  const told = (text: string) => /<p role="status">([^<]*)<\/p>/.exec(text)?.[1];

  it("for one pot is told where its form leads, with the way to take it back", async () => {
    const { store, send, get } = await houseOf(stock);
    const form = { formId: "form-0001", kind: "watered", waterMl: "650" };
    const { to } = await send("/pots/lemon/log", form);
    expect(to).toMatch(/^\/pots\/lemon\?kept=log\.form-0001\.\w+#kept$/);
    const page = await get(to!.split("#")[0]!);
    expect(told(page.text)).toBe("Kept for Lemon: Watered, 650 ml.");
    const [of, backTo] = ["of", "backTo"].map(
      (name) => new RegExp(`name="${name}" value="([^"]+)"`).exec(page.text)![1]!,
    );
    const back = await send("/pots/take-back", { formId: "form-0002", of: of!, backTo: backTo! });
    expect(back.to).toBe("/pots/lemon");
    expect((await store.journal.list("quay")).at(-1)?.body).toEqual({ kind: "undo", ofEntryId: of });
    expect(told((await get(to!.split("#")[0]!)).text)).toBeUndefined();
  });

  it("leads nowhere else when it is taken back", async () => {
    const { send } = await houseOf(stock);
    for (const backTo of ["//elsewhere.example", "https://elsewhere.example", "/\\elsewhere.example"])
      expect((await send("/pots/take-back", { of: "log.form-0001", backTo })).to).toBe("/pots");
  });

  it("is told of a pot whose name begins like another's for that one alone", async () => {
    const twin = { ...bare.pots[0]!, id: "lemon-two", name: "Lemon two" };
    const { get } = await houseOf({ ...stock, collection: { ...collection, pots: [...bare.pots, twin] } });
    expect(told((await get("/pots/lemon?kept=lemon")).text)).toBe("Kept: Lemon.");
    expect(told((await get("/pots/lemon?kept=nothing-of-ours")).text)).toBeUndefined();
  });
});

describe("the shelves", () => {
  it("stand by spot in walking order, a planted pot in section, each with what it asks for", async () => {
    const { text } = await (await houseOf(stock)).get("/pots");
    expect(text.indexOf("Tool shed")).toBeLessThan(text.indexOf("South rail"));
    expect(text).toContain("Section through the pot of Lemon: it holds 720 ml of 2.4 l.");
    expect(text).toContain("to be watered");
  });

  it("tell a planted pot in some 800 bytes and ten elements, and draw it whole: a large house has hundreds", async () => {
    const page = async (potCount: number) => (await (await houseOf(benchOf(potCount))).get("/pots")).text;
    const [few, many] = [await page(6), await page(66)];
    const elements = (text: string) => text.match(/<[a-z]/g)?.length ?? 0;
    const perPot = (many.length - few.length) / 60;
    expect(perPot).toBeGreaterThan(400);
    expect(perPot).toBeLessThan(850);
    // Ten boards are ten elements more.
    expect((elements(many) - elements(few) - 10) / 60).toBeLessThanOrEqual(10);
    for (const part of ["plant", "water", "surface", "wall wall-unglazed"])
      expect(many.split(`<path class="${part}" d="m`)).toHaveLength(67);
  });

  it("are one list each, however many pots a phone lays out at once", async () => {
    const { text } = await (await houseOf(benchOf(13))).get("/pots");
    expect(text.split('role="list"')).toHaveLength(2);
    expect(text.split('role="listitem"')).toHaveLength(14);
    const boards = text.split('<div class="boards">').slice(1);
    expect(boards.map((board) => board.split('role="listitem"').length - 1)).toEqual([6, 6, 1]);
  });

  it("take one entry for several pots, once however often it is sent", async () => {
    const { store, send } = await houseOf(stock);
    const form: [string, string][] = [
      ["formId", "form-0001"],
      ["potId", "lemon"],
      ["potId", "fig"],
      ["what", "watered"],
    ];
    await send("/pots/log", form);
    await send("/pots/log", form);
    const watered = (await store.journal.list("quay")).filter(({ body }) => body.kind === "watered");
    expect(watered.map(({ potId }) => potId)).toEqual(["lemon", "fig"]);
  });

  it("keep what was ticked where the spot is missing", async () => {
    const { send } = await houseOf(stock);
    const { status, text } = await send("/pots/log", [
      ["formId", "form-0001"],
      ["potId", "lemon"],
      ["what", "moved"],
    ]);
    expect(status).toBe(422);
    expect(text.match(/value="[^"]*" checked=""/g)).toEqual(['value="lemon" checked=""']);
  });

  it("take a whole bench but its pots to be kept dry with one tap, tell how many, and take all of it back", async () => {
    const { store, send, get } = await houseOf(stock);
    const sent = { formId: "form-0002", wateredSpotId: "rail", view: "/pots?spot=rail" };
    const { to } = await send("/pots/log", sent);
    await send("/pots/log", sent);
    expect(to).toMatch(/^\/pots\?spot=rail&kept=log\.form-0002\.\w+#kept$/);
    const { text } = await get(to!.split("#")[0]!);
    expect((await get("/pots")).text).toContain("South rail: 2 watered until they ran through, not those");
    const standing = bare.pots.filter(({ firstSpotId }) => firstSpotId === "rail").length - 1;
    expect(standing).toBe(2);
    expect(text).toContain(`Kept for ${standing} pots: Watered until it ran through.`);
    const of = /name="of" value="([^"]+)"/.exec(text)?.[1] ?? "";
    await send("/pots/take-back", { formId: "form-0003", of });
    const entries = await store.journal.list("quay");
    expect(entries.map(({ potId }) => potId)).not.toContain("plumeria");
    const kinds = entries.map(({ body }) => body.kind);
    expect(kinds.filter((kind) => kind === "watered")).toHaveLength(standing);
    expect(kinds.filter((kind) => kind === "undo")).toHaveLength(standing);
    expect((await get(to!.split("#")[0]!)).text).not.toContain("Kept for");
  });

  it("count only what is shown where some are out of sight", async () => {
    const { get } = await houseOf(stock);
    const all = plan().pots.reduce((sum, { count }) => sum + count, 0);
    expect((await get("/pots")).text).toContain(`${all} pots as they stand now.`);
    expect((await get("/pots?name=fig")).text).toContain(`1 of ${all} pots as they stand now.`);
  });

  it("show only the pots that are looked for, and the soonest need first over all benches", async () => {
    const wetDays: Record<string, number> = { aloe: 9, fig: 1 };
    const pots = plan().pots.map((one) => (wetDays[one.potId] ? wetFor(one, wetDays[one.potId]!) : one));
    const long = { ...plan(), pots };
    const { get } = await houseOf({ ...stock, plan: long });
    const shown = async (address: string) => {
      const { text } = await get(address);
      return [...text.matchAll(/name="potId" value="([^"]+)"/g)].map((hit) => hit[1]);
    };
    const all = await shown("/pots");
    expect(await shown("/pots?name=LEM")).toEqual(["lemon"]);
    expect(await shown("/pots?need=keep-dry")).toEqual(
      plan().pots.flatMap(({ action, potId }) => (action === "keep-dry" ? [potId] : [])),
    );
    expect((await shown("/pots?order=need")).toSorted()).toEqual(all.toSorted());
    expect((await shown("/pots?order=need")).at(-1)).toBe("aloe");
    expect(await shown("/pots?need=soon")).toEqual(all.filter((id) => id !== "aloe"));
    expect((await get("/pots?name=nobody")).text).toContain("No pot is like this");
  });

  it("ask for pots and for a spot before they keep a move", async () => {
    const { send } = await houseOf(stock);
    const { status, text } = await send("/pots/log", { formId: "form-0001", what: "moved", toSpotId: "" });
    expect(status).toBe(422);
    expect(text).toContain("Tick at least one pot");
    expect(text).toContain("Choose one from the list");
  });
});

describe("a pot's page", () => {
  it("does not read like a call for water where a pot is kept dry", async () => {
    const dry = plan().pots.map((one) =>
      one.potId === "lemon"
        ? {
            ...one,
            outlook: {
              ...one.outlook,
              dryUntil: "2026-05-20" as CalendarDay,
              daysToRefill: { low: -1, mid: 0, high: 0 },
            },
          }
        : one,
    );
    const { text } = await (await houseOf({ ...stock, plan: { ...plan(), pots: dry } })).get("/pots/lemon");
    expect(text).toContain("It has come down to its refill point; it is kept dry all the same.");
  });

  it.each([
    [{ low: 0, mid: 0, high: 0.4 }, "It has come down to its refill point."],
    [{ low: 0.3, mid: 0.9, high: 1 }, "Most likely it comes down to its refill point within a day."],
    [{ low: 0.3, mid: 0.9, high: 2.2 }, "its refill point within a day, in 3 days at the latest."],
    [{ low: 1, mid: 2.4, high: 5 }, "in 2 days; in a day at the earliest, in 5 days at the latest."],
    [{ low: 0.5, mid: 0.9, high: 7 }, "within a day; it may also stay above it through the days reckoned."],
  ])("tells the days to its refill point, the likeliest first: %j", async (daysToRefill, said) => {
    const pots = plan().pots.map((one) => ({ ...one, outlook: { ...one.outlook, daysToRefill } }));
    const { text } = await (await houseOf({ ...stock, plan: { ...plan(), pots } })).get("/pots/lemon");
    expect(text).toContain(said);
  });

  it("says what it asks for in the sentences of the brief, and shows outlook and journal", async () => {
    const { text } = await (await houseOf(stock)).get("/pots/lemon");
    expect(text).toContain("31% of its water is left; it waits for more at 35%.");
    expect(text).toContain('class="outlook"');
    expect(text).toContain("Planted in Lean, root ball left whole");
  });

  it.each([
    [
      { kind: "watered", waterMl: "" },
      { kind: "watered", given: { kind: "ran-through" } },
    ],
    [
      { kind: "watered", waterMl: "850" },
      { kind: "watered", given: { kind: "measured", waterMl: 850 } },
    ],
    [
      { kind: "watered", waterMl: "900", drainedMl: "150" },
      { kind: "watered", given: { kind: "poured-drained", pouredMl: 900, drainedMl: 150 } },
    ],
    [
      { kind: "moved", toSpotId: "shed" },
      { kind: "moved", toSpotId: "shed" },
    ],
    [
      { kind: "weighed", massKg: "9,4" },
      { kind: "weighed", massKg: 9.4 },
    ],
    [
      { kind: "checked", feel: "light", dryToCm: "6" },
      { kind: "checked", feel: "light", dryToCm: 6 },
    ],
    [
      { kind: "trouble", sign: "wilting", text: "" },
      { kind: "trouble", sign: "wilting" },
    ],
    [
      { kind: "leaf", state: "leafless" },
      { kind: "leaf", state: "leafless" },
    ],
    [
      { kind: "note", text: " two buds " },
      { kind: "note", text: "two buds" },
    ],
    [{ kind: "fed" }, { kind: "fed" }],
    [
      { kind: "gone", how: "died" },
      { kind: "gone", how: "died" },
    ],
  ])("logs %o", async (fields, body) => {
    const { store, planned, send } = await houseOf(stock);
    const typed = { formId: "form-0001", ...fields } as unknown as Record<string, string>;
    expect((await send("/pots/lemon/log", typed)).status).toBe(303);
    expect((await store.journal.list("quay")).at(-1)).toMatchObject({
      potId: "lemon",
      atUtcMs: NOW_UTC_MS,
      body,
    });
    expect(planned).toEqual(["quay"]);
  });

  it("logs what happened earlier at the hour that is entered, in the site's zone", async () => {
    const { store, send } = await houseOf(stock);
    await send("/pots/lemon/log", { formId: "form-0001", kind: "fed", day: "2027-05-10", time: "18:30" });
    expect((await store.journal.list("quay")).at(-1)?.atUtcMs).toBe(Date.parse("2027-05-10T16:30Z"));
  });

  // The vessel of the test takes 13 litres of mix.
  it.each([
    [{ kind: "watered", waterMl: "900000" }, "That is more than the pot is large, about 1"],
    [{ kind: "watered", waterMl: "500", drainedMl: "900" }, "More ran out than was poured."],
    [{ kind: "weighed", massKg: "900" }, "It was taken to weigh between 9 kg and"],
    [{ kind: "weighed", massKg: "0,9" }, "It was taken to weigh between 9 kg and"],
  ])(
    "asks about %o, keeps it once it is confirmed, and as it is where it had to wait",
    async (fields, said) => {
      const { store, get, send } = await houseOf(stock);
      const form = { formId: "form-0001", ...fields } as unknown as Record<string, string>;
      const asked = await send("/pots/lemon/log", form);
      expect([asked.status, await store.journal.list("quay")]).toEqual([422, journal]);
      expect(asked.text).toContain(said);
      expect(asked.text).toContain('name="entrySure"');
      expect((await send("/pots/lemon/log", { ...form, entrySure: "yes" })).status).toBe(303);
      const late = { ...form, formId: "form-0002", happenedAtUtcMs: String(NOW_UTC_MS - 60_000) };
      expect((await send("/pots/lemon/log", late)).status).toBe(303);
      const kept = (await store.journal.list("quay")).at(-1)!;
      const correction = await send(`/journal/${encodeURIComponent(kept.id)}/correct`, form);
      expect([correction.status, correction.text.includes(said)]).toEqual([422, true]);
      expect((await get("/pots/lemon")).text).not.toContain('name="entrySure"');
    },
  );

  it.each([
    [{ kind: "weighed", massKg: "" }, "This is still needed"],
    [{ kind: "checked" }, "This is still needed"],
    [{ kind: "moved", toSpotId: "" }, "This is still needed"],
    [{ kind: "moved", toSpotId: "cellar" }, "Choose one from the list"],
    [{ kind: "fed", day: "2027-05-13" }, "today or an earlier day"],
    [{ kind: "fed", time: "25:00" }, "Enter a time of day"],
    [{ kind: "planted", shape: "round" }, "things are still to be mended"],
  ])("keeps %o open and says what is missing", async (fields, said) => {
    const { store, send } = await houseOf(stock);
    const { status, text } = await send("/pots/lemon/log", { formId: "form-0001", ...fields } as never);
    expect(status).toBe(422);
    expect(text).toContain(said);
    expect(text).toMatch(/<details class="log" open/);
    expect(await store.journal.list("quay")).toHaveLength(journal.length);
  });

  it("asks beside an entry that does not fit, there and in the journal", async () => {
    const weighed = { kind: "weighed" as const, massKg: 25 };
    const at = { atUtcMs: NOW_UTC_MS - 3_600_000, recordedUtcMs: NOW_UTC_MS - 3_600_000 };
    const doubted = [
      {
        entryId: "odd",
        notedAt: "2027-05-10T15:30Z",
        expected: { low: 9.2, high: 9.9, unit: "kg" as const },
        wetter: true,
        question: "another-pot" as const,
      },
    ] as unknown as NonNullable<PotPlan["doubted"]>;
    const pots = stock.plan.pots.map((row) => (row.potId === "lemon" ? { ...row, doubted } : row));
    const { get } = await houseOf({
      ...stock,
      plan: { ...stock.plan, pots },
      journal: [...journal, { id: "odd", potId: "lemon", ...at, body: weighed }],
    });
    for (const page of ["/pots/lemon", "/journal"]) {
      expect((await get(page)).text).toContain(
        "This does not fit: between 9.2 kg and 9.9 kg was expected. Was it another pot? Note or correct what was missing, and all is reckoned anew.",
      );
    }
    expect((await get("/pots/fig")).text).not.toContain("does not fit");
  });

  it("is not there for an unknown pot, and a pot that is gone leaves the shelf", async () => {
    const { get, send } = await houseOf(stock);
    expect((await get("/pots/nobody")).status).toBe(404);
    await send("/pots/fig/log", { formId: "form-0001", kind: "gone", how: "given-away" });
    expect((await get("/pots")).text).not.toContain("/pots/fig");
  });
});

describe("a correction", () => {
  it("begins with the entry as it stands and leaves it untouched", async () => {
    const { store, get, send } = await houseOf(stock);
    await send("/pots/lemon/log", {
      formId: "form-0001",
      kind: "watered",
      waterMl: "800",
      day: "2027-05-11",
      time: "07:30",
    });
    const first = (await store.journal.list("quay")).at(-1)!;
    const address = `/journal/${encodeURIComponent(first.id)}/correct`;
    const { text } = await get(address);
    expect(text).toContain('value="800"');
    expect(text).toContain('value="07:30"');
    await send(address, {
      formId: "form-0002",
      kind: "watered",
      waterMl: "950",
      day: "2027-05-11",
      time: "07:30",
    });
    expect((await store.journal.list("quay")).find(({ id }) => id === first.id)).toEqual(first);
    const after = (await get("/pots/lemon")).text;
    expect(after).toContain("Watered, 950 ml");
    expect(after).not.toContain("Watered, 800 ml");
  });

  it("says what is missing, and there is none for an unknown entry", async () => {
    const { get, send } = await houseOf(stock);
    const { status, text } = await send("/journal/planted-lemon/correct", {
      formId: "form-0001",
      kind: "planted",
    });
    expect(status).toBe(422);
    expect(text).toContain("still to be mended");
    expect((await get("/journal/none/correct")).status).toBe(404);
  });
});
