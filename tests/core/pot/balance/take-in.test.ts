import { describe, expect, it } from "vitest";
import { runHours } from "../../../../core/pot/balance/run-hours.ts";
import { LEACH_FRAC, roomMl, runThroughMl, soakIn } from "../../../../core/pot/balance/take-in.ts";
import { contentMl } from "../../../../core/pot/balance/tank.ts";
import { drawnTank, forcing, PEATY, tankPlan, vessel } from "../build-pot.ts";

const still = forcing({ hourCount: 48, et0Mm: () => 0 });

function hours(tank: ReturnType<typeof drawnTank>, count: number, pourMl = 0): void {
  runHours(tank, { forcing: still, fromHour: 0, toHour: count, pourMl }, null);
}

describe("water into a pot", () => {
  it("fills the surface before the body", () => {
    const tank = drawnTank(tankPlan(), { size: 1 });
    tank.surfaceMl[0] = 50;
    tank.bodyMl[0] = 300;
    expect(soakIn({ tank, particle: 0, waterMl: 80 })).toBe(0);
    expect(tank.surfaceMl[0]).toBe(0);
    expect(tank.bodyMl[0]).toBe(270);
  });

  it("lets run out what there is no room for", () => {
    const tank = drawnTank(tankPlan(), { size: 1 });
    tank.bodyMl[0] = 100;
    expect(soakIn({ tank, particle: 0, waterMl: 250 })).toBe(150);
    expect(contentMl(tank, 0)).toBe(tank.capacityMl[0]);
  });

  it("holds a can's worth more where a saucer stands, and gives it back to the mix", () => {
    const tank = drawnTank(tankPlan({ vessel: vessel({ saucerCm: 2 }) }), { size: 1 });
    const most = tank.saucerMostMl;
    expect(most).toBeGreaterThan(100);
    hours(tank, 1, most + 40);
    expect(tank.saucerMl[0]).toBeCloseTo(most, 9);
    expect(tank.account.drainedMl[0]).toBeCloseTo(40, 9);
    tank.bodyMl[0] = 60;
    hours(tank, 1);
    expect(tank.bodyMl[0]).toBeLessThan(1);
    expect(tank.saucerMl[0]).toBeCloseTo(most - 60, 9);
  });

  it("pours until it runs through: room, and an eighth that leaves again", () => {
    const tank = drawnTank(tankPlan(), { size: 1 });
    tank.bodyMl[0] = 440;
    expect(runThroughMl(tank, 0)).toBeCloseTo(440 / (1 - LEACH_FRAC), 9);
    hours(tank, 1, Number.POSITIVE_INFINITY);
    expect(tank.account.drainedMl[0]).toBeCloseTo((440 * LEACH_FRAC) / (1 - LEACH_FRAC), 9);
  });

  it("sheds more the drier peat is, and none once it is damp", () => {
    const tank = drawnTank(tankPlan({ mix: PEATY }), { size: 1 });
    const below = tank.shedsBelowMl[0]!;
    expect(below).toBeGreaterThan(0);
    const shedAt = (content: number) => {
      tank.bodyMl[0] = tank.capacityMl[0]! - content;
      return tank.bodyMl[0] - roomMl(tank, 0);
    };
    expect(shedAt(1.01 * below)).toBe(0);
    expect(shedAt(0.75 * below)).toBeCloseTo(tank.shedsMissingMl[0]! / 2, 6);
    expect(shedAt(0.5 * below)).toBeCloseTo(tank.shedsMissingMl[0]!, 6);
    expect(shedAt(0.3 * below)).toBeCloseTo(tank.shedsMissingMl[0]!, 6);
  });

  it("takes dry peat up on the second watering", () => {
    const tank = drawnTank(tankPlan({ mix: PEATY }), { size: 1 });
    tank.bodyMl[0] = tank.bodyMostMl[0]!;
    soakIn({ tank, particle: 0, waterMl: Number.POSITIVE_INFINITY });
    expect(contentMl(tank, 0)).toBeLessThan(0.95 * tank.capacityMl[0]!);
    soakIn({ tank, particle: 0, waterMl: Number.POSITIVE_INFINITY });
    expect(contentMl(tank, 0)).toBeCloseTo(tank.capacityMl[0]!, 9);
  });
});
