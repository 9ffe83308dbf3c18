import { describe, expect, it } from "vitest";
import { GROUPS, groupsById } from "../../../core/plant/groups.ts";
import { SOURCES } from "../../../core/sources.ts";

const ASKED_FOR = [
  "desert-rose",
  "desert-rose-resting",
  "pachypodium-summer",
  "pachypodium-winter",
  "plumeria-deciduous",
  "plumeria-evergreen",
  "euphorbia-thorny",
  "bougainvillea",
  "cactus-desert",
  "cactus-warm",
  "cactus-epiphytic",
  "aloe-summer",
  "aloe-winter",
  "agave",
  "jade",
  "pelargonium",
  "citrus",
  "olive",
  "fig-bonsai",
  "hibiscus",
  "other-leafy",
  "other-succulent",
];

describe("the kinds of plants", () => {
  it("are all there, once each", () => {
    expect(GROUPS.map(({ id }) => id).sort()).toEqual([...ASKED_FOR].sort());
  });

  it.each(GROUPS)("$id: figures stand in order and within their bounds", ({ values }) => {
    expect(values.killC).toBeLessThan(values.damageC);
    if (values.stopWaterNightC !== null) {
      expect(values.stopWaterNightC).toBeLessThan(values.cutWaterNightC);
    }
    expect(values.restRefillFrac).toBeLessThanOrEqual(values.refillFrac);
    expect(values.restCoefficient).toBeLessThan(values.basalCoefficient);
    for (const share of [values.refillFrac, values.restRefillFrac, values.depletionFrac]) {
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThan(1);
    }
    expect(values.basalCoefficient).toBeLessThanOrEqual(1.2);
  });

  it.each(GROUPS)("$id: every figure says where it comes from", ({ values, evidence }) => {
    expect(Object.keys(evidence).sort()).toEqual(Object.keys(values).sort());
    for (const { status, key } of Object.values(evidence)) {
      if (key !== null) expect(SOURCES).toHaveProperty(key);
      if (status === "published") expect(key).not.toBeNull();
    }
  });

  it.each(GROUPS)("$id: leafy plants are never left fully dry, the others may be", ({ values }) => {
    if (values.leafy) expect(values.stopWaterNightC).toBeNull();
  });

  it("lets the grower's own group stand in place of the library's", () => {
    const own = { ...GROUPS[0]!, values: { ...GROUPS[0]!.values, damageC: 1 } };
    expect(groupsById([own]).get(own.id)).toBe(own);
    expect(groupsById().get(own.id)).toBe(GROUPS[0]);
  });
});

/** Figures printed in the sources named; read-in-source. */
const PRINTED = [
  { id: "desert-rose", name: "damageC", value: 4.4, key: "UFIFAS_DESERT_ROSE", printed: "40 °F" },
  { id: "desert-rose", name: "stopWaterNightC", value: 10, key: "DIMMITT2012A", printed: "50 °F" },
  { id: "desert-rose", name: "cutWaterNightC", value: 15.6, key: "DIMMITT2012A", printed: "60 °F" },
  { id: "aloe-summer", name: "killC", value: -2, key: "ECOCROP", printed: "Aloe ferox -2" },
  { id: "agave", name: "killC", value: -5, key: "ECOCROP", printed: "Agave sisalana -5" },
  { id: "agave", name: "depletionFrac", value: 0.8, key: "FAO56", printed: "table 22, sisal 0.80" },
  { id: "citrus", name: "killC", value: -6, key: "ECOCROP", printed: "lemon at rest -6" },
  { id: "citrus", name: "depletionFrac", value: 0.5, key: "FAO56", printed: "table 22, citrus 0.50" },
  { id: "olive", name: "killC", value: -10, key: "ECOCROP", printed: "olive at rest -10" },
  { id: "olive", name: "depletionFrac", value: 0.65, key: "FAO56", printed: "table 22, olives 0.65" },
  { id: "bougainvillea", name: "killC", value: -1, key: "ECOCROP", printed: "B. glabra -1" },
  { id: "bougainvillea", name: "heatC", value: 38, key: "ECOCROP", printed: "B. glabra growth to 38" },
  { id: "cactus-epiphytic", name: "cutWaterNightC", value: 12, key: "ECOCROP", printed: "growth from 12" },
] as const;

describe("figures that are printed somewhere", () => {
  it("are thirteen", () => expect(PRINTED).toHaveLength(13));

  it.each(PRINTED)("$id $name ($printed)", ({ id, name, value, key }) => {
    const group = groupsById().get(id)!;
    expect(group.values[name]).toBe(value);
    expect(group.evidence[name]).toEqual({ status: "published", key });
  });
});
