import { expect, it } from "vitest";
import { collection, deed, plan } from "../brief/plan-builder.ts";
import { houseOf } from "./house-of.ts";

const AUNT = { id: "aunt", name: "Aunt Ode", locale: "es", units: "metric" as const, quiet: null };
const HANDED = { "handover-person": "aunt", fromDay: "2027-05-14", toDay: "2027-05-20" };
const stocked = () => houseOf({ collection, plan: plan() });

it("is a sheet for whoever knows no plant: where the pots stand, then day by day what to do", async () => {
  const { get } = await stocked();
  const { text } = await get("/holiday");
  expect(text).toContain("Stands at South rail: Lemon (3 pots), Plumeria and Fig.");
  expect(text).toContain("Water: Lemon (3 pots), 850 ml each, by 09:00.");
  expect(text).toContain("Wednesday 12 May");
});

it("says beside each deed how it is done and what could hurt, and lists apart what is handled otherwise", async () => {
  const shade = deed({
    action: "shade",
    by: "2027-05-14T08:00Z",
    reason: { code: "heat-and-sun", numbers: { hottestC: 38, limitC: 35 } },
  });
  const pots = plan().pots.map((row) => {
    if (row.potId === "fig") return { ...row, ...shade };
    // biome-ignore lint/suspicious/noThenProperty: the plan's own name for later deeds
    return row.potId === "aloe" ? { ...row, then: [shade] } : row;
  });
  const { get } = await houseOf({ collection, plan: { ...plan(), pots } });
  const { text } = await get("/holiday");
  expect(text).toContain(
    "Carry under cover: Plumeria, to Tool shed, by 13:00. 31 kg: two people. Its sap burns or poisons: wear gloves",
  );
  expect(text).toContain(
    "Water: Lemon (3 pots), 850 ml each, by 09:00. Only this much: not until it runs through.",
  );
  expect(text).toContain(
    "Shade: Aloe and Fig, by 10:00. Cloth, or a taller neighbour on its sunny side, through the bright hours.",
  );
  expect(text).toContain("Carry back out: Aloe, to South rail, from 09:00.</li>");
});

it("says where a person is entered when there is none to hand over to", async () => {
  const { get } = await stocked();
  expect((await get("/holiday")).text).toContain("Enter the person under People and messages first");
});

it("keeps who looks after the pots, shows it, warns while no way leads there, and can be called off", async () => {
  const { get, send, store } = await stocked();
  await store.people.put(AUNT);
  expect(await send("/holiday/handover", { ...HANDED, alone: "yes" })).toMatchObject({ status: 303 });
  const [kept] = await store.choices.handovers();
  expect(kept).toMatchObject({ personId: "aunt", fromDay: "2027-05-14", toDay: "2027-05-20", alone: true });
  const { text } = await get("/holiday");
  expect(text).toContain("Aunt Ode alone, Friday 14 May to Thursday 20 May.");
  expect(text).toContain("No way leads to Aunt Ode yet");
  expect(text).not.toContain("<h2>Wednesday 12 May</h2>");
  await send(`/holiday/handover/${kept?.id}/end`, {});
  expect(await store.choices.handovers()).toEqual([]);
});

it.each([
  [{ toDay: "2027-05-13" }, "The last day comes before the first."],
  [{ fromDay: "2027-04-01", toDay: "2027-04-02" }, "Choose today or a later day."],
  [{ "handover-person": "nobody" }, "Choose one from the list."],
  [{ fromDay: "soon" }, "Enter a day, such as 2027-05-12."],
])("refuses %j, says what to do and keeps nothing", async (wrong, says) => {
  const { send, store } = await stocked();
  await store.people.put(AUNT);
  const answer = await send("/holiday/handover", { ...HANDED, ...wrong });
  expect(answer.status).toBe(422);
  expect(answer.text).toContain(says);
  expect(await store.choices.handovers()).toEqual([]);
});

it("keeps on the page of the house who wants a line on empty mornings", async () => {
  const { get, send, store } = await stocked();
  await store.people.put(AUNT);
  expect(await send("/house/mornings", { wants: "house" })).toMatchObject({ status: 303, to: "/house" });
  expect(await store.choices.skipEmpty()).toEqual(["aunt"]);
  expect((await get("/house")).text).toContain("Empty mornings");
});
