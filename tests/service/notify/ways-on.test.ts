import { describe, expect, it } from "vitest";
import type { CalendarDay } from "../../../core/site/site.ts";
import type { Channel } from "../../../service/notify/channel.ts";
import { planMessages } from "../../../service/notify/plan-messages.ts";
import { sheetMessages } from "../../../service/notify/sheet-messages.ts";
import type { Way } from "../../../service/notify/way.ts";
import { waysOn } from "../../../service/notify/ways-on.ts";
import { weeklyMessages } from "../../../service/notify/weekly-messages.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { collection, plan, potPlan } from "../brief/plan-builder.ts";
import { emptyStore } from "../store/test-store.ts";
import { wayBy } from "./fixed-post.ts";

const channel = (name: string): Channel => ({
  name,
  sort: "log",
  deliver: async () => ({ ok: true }),
});
const OWNER = wayBy(channel("owner"), { kinds: new Set(["morning", "weekly", "trouble"]) });
const AUNT = wayBy(channel("aunt"), { personId: "aunt", words: wordsFor("es", "metric"), kinds: new Set() });
const HANDED = { id: "one", personId: "aunt", fromDay: "2027-05-10", toDay: "2027-05-14", alone: false };
const day = (text: string) => text as CalendarDay;

async function namesOn(text: string, { alone = false, ways = [OWNER, AUNT] as readonly Way[] } = {}) {
  const store = await emptyStore();
  await store.choices.putHandovers([{ ...HANDED, alone }]);
  const all = await waysOn(day(text), { post: { ways: async () => ways }, store });
  return all.filter(({ kinds }) => kinds.has("morning")).map(({ channel: { name } }) => name);
}

describe("a hand-over", () => {
  it.each([
    ["2027-05-09", ["owner"]],
    ["2027-05-10", ["owner", "aunt"]],
    ["2027-05-14", ["owner", "aunt"]],
    ["2027-05-15", ["owner"]],
  ])("begins and ends by itself: on %s the brief goes to %j", async (on, names) => {
    expect(await namesOn(on)).toEqual(names);
  });

  it("silences the others where it was asked for, but nobody when no way leads to the person", async () => {
    expect(await namesOn("2027-05-12", { alone: true })).toEqual(["aunt"]);
    expect(await namesOn("2027-05-12", { alone: true, ways: [OWNER] })).toEqual(["owner"]);
  });

  it("is told in the brief, and on its first day the sheet comes along in the person's words", async () => {
    const way = { ...AUNT, cover: HANDED, kinds: new Set(["morning"] as const) };
    const common = { collection, ways: [way], houseId: "h", nowUtcMs: 0 };
    const signing = { key: Buffer.from("k"), publicUrl: null };
    const [brief] = planMessages({ ...common, plan: plan(), signing, amendment: null });
    expect(brief?.body).toContain("viernes 14 de mayo");
    expect(sheetMessages({ ...common, plan: plan() })).toEqual([]);
    const [sheet] = sheetMessages({ ...common, plan: plan({ forDay: day("2027-05-10") }) });
    expect(sheet?.subject).toBe(way.words.say("holiday.title"));
    expect(sheet?.body).toContain("South rail");
  });
});

describe("an empty morning", () => {
  const empty = plan({ pots: [potPlan("fig")], cautions: [], changesSince: [] });
  const send = (way: Way, of = empty) =>
    planMessages({
      plan: of,
      collection,
      ways: [way],
      signing: { key: Buffer.from("k"), publicUrl: null },
      houseId: "h",
      nowUtcMs: 0,
      amendment: null,
    });

  it("is a message of one line", () => {
    expect(send(OWNER)[0]?.body).toBe("Wednesday 12 May at Low Quay: The one pot needs nothing today.\n");
  });

  it("is no message for whoever skips them; any other morning is", () => {
    expect(send({ ...OWNER, skipsEmpty: true })).toEqual([]);
    expect(send({ ...OWNER, skipsEmpty: true }, plan())).toHaveLength(1);
  });

  it("is skipped by person, as chosen for the house", async () => {
    const store = await emptyStore();
    await store.choices.putSkipEmpty(["aunt"]);
    const ways = await waysOn(day("2027-05-12"), { post: { ways: async () => [OWNER, AUNT] }, store });
    expect(ways.map(({ skipsEmpty }) => skipsEmpty ?? false)).toEqual([false, true]);
  });
});

it("looks at the week on Mondays only", () => {
  const on = (forDay: string) =>
    weeklyMessages({
      plan: plan({ forDay: day(forDay) }),
      collection,
      ways: [OWNER, AUNT],
      houseId: "h",
      nowUtcMs: 0,
    }).map(({ channel: name }) => name);
  expect(on("2027-05-10")).toEqual(["owner"]);
  expect(on("2027-05-11")).toEqual([]);
});
