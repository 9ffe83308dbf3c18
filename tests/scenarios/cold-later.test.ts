import { expect, it } from "vitest";
import { namingFor } from "../../service/brief/naming.ts";
import { reasonLine } from "../../service/brief/reason-line.ts";
import { wordsFor } from "../../service/words/words.ts";
import { caseOf, deedsOf, planOf } from "./scenario.ts";
import type { Sky } from "./scenario-weather.ts";
import { after, COLD, MILD } from "./skies.ts";

/** What the brief says of carrying a cactus of warm countries, which is hurt below ten degrees, and on which day. */
function told(sky: Sky) {
  const pots = [{ id: "melon", group: "cactus-warm", rimCm: 14, wateredDaysAgo: [6] } as const];
  const input = caseOf({ situation: "", why: "", season: "autumn", sky, pots, expected: {} });
  const plan = planOf(input);
  const deed = deedsOf(plan, "melon").find(({ action }) => action === "carry-in")!;
  const naming = namingFor({ plan, collection: input.collection, words: wordsFor("en", "metric") });
  return { day: deed.by!.slice(0, 10), text: reasonLine(deed.reason, naming) };
}

it("a carry today ahead of cold that is days off, for the rain before it, says which night is cold", () => {
  const wet = { ...MILD, rain: { mm: 20, from: 13, hours: 4 } };
  const { day, text } = told(after(MILD, MILD, wet, MILD, COLD));
  expect(day).toBe("2031-10-10");
  expect(text).toMatch(
    /^The night of \w+ 1[2-4] October goes down to -?[0-4]\s°C; it is hurt below 10\s°C\.$/,
  );
});

it("a carry on the evening of the cold speaks of the night that comes", () => {
  expect(told(after(MILD, { ...COLD, maxC: 15 }, COLD)).text).toMatch(/^The night goes down to /);
});
