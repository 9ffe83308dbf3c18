import { describe, expect, it } from "vitest";
import { OWN_CHOICES, OWN_NUMBERS } from "../../../service/pages/pots/own-values.ts";
import { groupValues } from "../../core/pot/build-pot.ts";
import { collection, plan } from "../brief/plan-builder.ts";
import { houseOf } from "./house-of.ts";

const stock = { collection, plan: plan() };
const FORM = {
  name: "Lemon by the door",
  groupId: "citrus",
  count: "3",
  canopyWidthCm: "55",
  plantHeightCm: "80,5",
};

async function changed(fields: Record<string, string>) {
  const house = await houseOf(stock);
  const sent = await house.send("/pots/lemon/change", { ...FORM, ...fields });
  return { ...house, ...sent, pot: (await house.store.pots.list("quay")).find(({ id }) => id === "lemon")! };
}

describe("the figures of a pot", () => {
  it("can be changed, and the plan is made anew", async () => {
    const { to, pot, planned } = await changed({});
    expect(to).toBe("/pots/lemon?kept=lemon#kept");
    expect(pot).toMatchObject({
      name: "Lemon by the door",
      count: 3,
      canopyWidthCm: 55,
      plantHeightCm: 80.5,
    });
    expect(pot).not.toHaveProperty("own");
    expect(planned).toEqual(["quay"]);
  });

  it("take the plant's own days of keeping dry", async () => {
    const { pot } = await changed({ "dry.pruned": "3", "dry.cutting": "" });
    expect(pot.dryDays).toEqual({ pruned: 3 });
  });

  it("offer every figure in which kinds of plants differ", () => {
    const offered = [...OWN_NUMBERS.map(({ name }) => name), ...Object.keys(OWN_CHOICES)];
    const known = [...Object.keys(groupValues("citrus")), "stopsWater"];
    expect(offered.sort()).toEqual(known.sort());
  });

  it("are chosen from lists that begin with a capital, as all lists do", async () => {
    const { get } = await houseOf(stock);
    for (const address of ["/pots/lemon/change", "/pots/new", "/pots/lemon"]) {
      const options = [...(await get(address)).text.matchAll(/<option[^>]*>([^<]+)/g)].map((hit) => hit[1]!);
      expect(options.length).toBeGreaterThan(5);
      expect(options.filter((text) => /^\p{Ll}/u.test(text))).toEqual([]);
    }
  });

  it("keep own values in place of the kind's, and show them again", async () => {
    const { pot, get } = await changed({
      "own.damageC": "1.5",
      "own.refillFrac": "40",
      "own.leafy": "no",
      "own.sap": "irritant",
      "own.growth": "as-kind",
    });
    expect(pot.own).toEqual({ damageC: 1.5, refillFrac: 0.4, leafy: false, sap: "irritant" });
    const { text } = await get("/pots/lemon/change");
    expect(text).toMatch(/name="own\.damageC"[^>]*value="1\.5"/);
    expect(text).toMatch(/name="own\.refillFrac"[^>]*value="40"/);
    expect(text).toMatch(/<option value="irritant" selected/);
  });

  it("let a plant be watered in the cold whatever its kind", async () => {
    const { pot } = await changed({ groupId: "desert-rose", "own.stopsWater": "no" });
    expect(pot.own).toEqual({ stopWaterNightC: null });
  });

  it("say beside each figure what its kind has and what that rests on", async () => {
    const { text } = await (await houseOf(stock)).get("/pots/lemon/change");
    expect(text).toContain("Its kind: -6 °C, published.");
  });

  it.each([
    [{ name: " " }, "name", "needed"],
    [{ groupId: "triffid" }, "groupId", "Choose one from the list"],
    [{ count: "0" }, "count", "from 1 to 10"],
    [{ "own.killC": "5", "own.damageC": "4" }, "own.killC", "cannot be killed before it is harmed"],
    [{ groupId: "desert-rose", "own.stopWaterNightC": "16" }, "own.stopWaterNightC", "cut before it stops"],
    [{ "own.restRefillFrac": "90" }, "own.restRefillFrac", "waits at least as long"],
    [{ "own.refillFrac": "120" }, "own.refillFrac", "from 0 to 100"],
  ])("are asked again for %o", async (wrong, field, said) => {
    const { status, text, pot } = await changed(wrong as Record<string, string>);
    expect(status).toBe(422);
    expect(text).toContain(`href="#${field}"`);
    expect(text).toContain(said);
    expect(pot.name).toBe("Lemon");
  });

  it("of a pot that is not there are not found", async () => {
    const { get, send } = await houseOf(stock);
    expect((await get("/pots/nothing/change")).status).toBe(404);
    expect((await send("/pots/nothing/change", FORM)).status).toBe(404);
  });
});
