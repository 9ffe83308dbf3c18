import { describe, expect, it } from "vitest";
import { askedHouse } from "./asked-house.ts";
import { QUESTIONS } from "./growers-questions.ts";

/** Each question is put to the running house and its answer read as the grower reads it. */
describe("what growers ask most", () => {
  it("is twenty-five questions, each once", () => {
    expect(new Set(QUESTIONS.map(({ asked }) => asked)).size).toBe(25);
  });

  it.each(QUESTIONS.map((question) => [question.asked, question] as const))("%s", async (_, question) => {
    const text = await question.answer(await askedHouse(question.morning));
    for (const said of question.says) expect(text).toMatch(said);
    for (const said of question.saysNot ?? []) expect(text).not.toMatch(said);
  });
});
