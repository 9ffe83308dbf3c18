import { describe, expect, it } from "vitest";
import { namingFor } from "../../service/brief/naming.ts";
import { reasonLine } from "../../service/brief/reason-line.ts";
import { wordsFor } from "../../service/words/words.ts";
import { caseOf, deedsOf, planOf } from "./scenario.ts";
import type { PotStory } from "./scenario-pots.ts";
import type { Sky } from "./scenario-weather.ts";
import { settled, WARM } from "./skies.ts";

const CUT: PotStory = {
  id: "rose",
  group: "desert-rose",
  plantedDaysAgo: 3,
  roots: "pruned",
  plantedInto: "dry",
};

/** What the brief says of keeping a freshly cut desert rose dry, and until when. */
function told(sky: Sky, story: Partial<PotStory> = {}) {
  const input = caseOf({
    situation: "",
    why: "",
    season: "autumn",
    sky,
    pots: [{ ...CUT, ...story }],
    expected: {},
  });
  const plan = planOf(input);
  const deed = deedsOf(plan, "rose").find(({ reason }) => reason.code === "freshly-planted-dry")!;
  const words = wordsFor("en", "metric");
  const naming = namingFor({ plan, collection: input.collection, words });
  return { until: deed.until!, text: reasonLine(deed.reason, naming) };
}

describe("the dry wait after root work", () => {
  const warm = told(settled(WARM));

  it("is counted from planting in warm weather", () => {
    expect(warm.text).toMatch(/^Roots were disturbed \d days ago; cuts close dry, until /);
  });

  it("is said to be longer because it is cool", () => {
    const cool = told(settled({ minC: 8, maxC: 13, cloudFrac: 0.7 }), { at: "shed" });
    expect(cool.until > warm.until).toBe(true);
    expect(cool.text).toMatch(/in this cool weather cuts close [\d.]+ times slower/);
  });

  it("is said to begin anew after a soaking", () => {
    const soaked = told(settled(WARM), { wateredDaysAgo: [1] });
    expect(soaked.until > warm.until).toBe(true);
    expect(soaked.text).toMatch(/^It was soaked on \w+ 9 October with its cuts still open/);
  });
});
