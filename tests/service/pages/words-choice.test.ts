import { expect, it } from "vitest";
import { houseWords } from "../../../service/words/house-words.ts";
import { collection, plan } from "../brief/plan-builder.ts";
import { houseOf } from "./house-of.ts";

const CHOSEN = { language: "bn", numerals: "beng", clock: "h23", units: "metric" };

it("keeps the language of the house and speaks it from the next page on", async () => {
  const { get, send, store } = await houseOf({ collection, plan: plan() });
  expect((await get("/house")).text).toContain('<html lang="en"');
  expect(await send("/house/words", CHOSEN)).toMatchObject({ status: 303, to: "/house" });
  expect((await get("/house")).text).toContain('<html lang="bn"');
  expect(await store.choices.wordChoice()).toEqual({ locale: "bn-u-hc-h23-nu-beng", units: "metric" });
});

it("can be chosen before there is a place, and is named in each language there", async () => {
  const { get, send } = await houseOf();
  expect((await get("/begin")).text).toContain("English, Español, বাংলা, हिन्दी");
  expect(await send("/house/words", CHOSEN)).toMatchObject({ status: 303, to: "/begin" });
});

it("refuses a language that nobody speaks here and keeps what was typed", async () => {
  const { send, store } = await houseOf({ collection });
  const answer = await send("/house/words", { ...CHOSEN, language: "xx" });
  expect(answer.status).toBe(422);
  expect(answer.text).toContain("Choose one from the list.");
  expect(await store.choices.wordChoice()).toBeNull();
});

it("takes numbers typed in the digits of Bengali and Devanagari", async () => {
  const { send, store } = await houseOf({ collection });
  const rules = { dayStartsHour: "৬", dayEndsHour: "२१", horizonDays: "১০", tripWorth: "২,৫" };
  expect((await send("/house/rules", rules)).status).toBe(303);
  expect(await store.settings.get(collection.site.id)).toMatchObject({
    dayStartsHour: 6,
    dayEndsHour: 21,
    horizonDays: 10,
    tripWorth: 2.5,
  });
});

it("starts from the settings until somebody chose", () => {
  const words = houseWords({ locale: "es-MX", units: "us" });
  expect(words.choice).toEqual({ locale: "es-MX", units: "us" });
});
