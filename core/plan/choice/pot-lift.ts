import type { Pot } from "../../pot/pot.ts";
import type { Vessel } from "../../pot/vessel.ts";
import type { Lift } from "../deed.ts";
import { roundTo } from "../rows/round-to.ts";
import { recommendedLimitKg } from "./lifting-equation.ts";

/** Height at which a pot is carried: knuckles. [NIOSH94110] */
const CARRY_CM = 75;
/** Two people share a load unevenly and see their feet badly: less than twice one. Chosen by us. */
const TWO_PEOPLE_FACTOR = 1.7;

/**
 * Who should lift a pot from the floor: its mass against the lifting equation. Hands grip below the rim, the body
 * stands off by half the pot's width, and a pot has no handles. The grower's own limit may lower it, never raise it.
 */
export function potLift(input: {
  massKg: number;
  vessel: Pick<Vessel, "topCm" | "heightCm">;
  count?: Pot["count"];
  liftLimitKg?: number;
}): Lift {
  const { massKg, vessel } = input;
  const limitKg = Math.min(floorLimitKg(vessel), input.liftLimitKg ?? Number.POSITIVE_INFINITY);
  return {
    massKg: roundTo(massKg, massKg < 10 ? 0.1 : 0.5),
    hands: massKg <= limitKg ? "one" : massKg <= limitKg * TWO_PEOPLE_FACTOR ? "two-people" : "trolley",
    limitKg: roundTo(limitKg, 0.1),
  };
}

/** The equation's limit for a pot on the floor. Below 25 cm the hands reach further out. [NIOSH94110 H = 20 or 25 + W/2] */
function floorLimitKg({ topCm, heightCm }: Pick<Vessel, "topCm" | "heightCm">): number {
  const handsCm = Math.min(CARRY_CM, heightCm * 0.6);
  return recommendedLimitKg({
    horizontalCm: (handsCm < 25 ? 25 : 20) + topCm / 2,
    heightCm: handsCm,
    travelCm: CARRY_CM - handsCm,
    twistDeg: 0,
    frequencyMultiplier: 1,
    grip: "poor",
  });
}
