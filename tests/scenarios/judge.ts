import type { Deed } from "../../core/plan/deed.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { HOUR_MS } from "../../core/weather/weather.ts";
import { deedsOf, type Expected, type Scenario, todayOf } from "./scenario.ts";

/** Everything in which a plan differs from what a scenario expects, in words; nothing when it is as expected. */
export function objections(scenario: Scenario, plan: Plan): string[] {
  return [...underThunder(plan), ...Object.entries(scenario.expected).flatMap(faultsOf(scenario, plan))];
}

function faultsOf(scenario: Scenario, plan: Plan) {
  return ([potId, expected]: [string, Expected]): string[] => {
    const deeds = deedsOf(plan, potId);
    const told = deeds
      .map((deed) => `${deed.action} (${deed.reason.code}${deed.by ? `, by ${deed.by}` : ""})`)
      .join(", ");
    const held = plan.pots.find((pot) => pot.potId === potId)?.holds ?? [];
    const unheld = (expected.holds ?? []).filter((kind) => !held.some((hold) => hold.kind === kind));
    const found = [...faults({ scenario, expected, deeds }), ...unheld.map((kind) => `${kind} should wait`)];
    return found.map((fault) => `${potId}: ${fault}; the plan says ${told}`);
  };
}

/**
 * Deeds whose hours of one day hold an hour of thunder or the one after it, whatever else is expected. Rule of weather
 * services: indoors until thirty minutes after the last thunder.
 */
function underThunder(plan: Plan): string[] {
  const thunder = plan.days.flatMap(({ thunderHours }) => thunderHours.map((at) => Date.parse(at)));
  return plan.pots.flatMap(({ potId }) =>
    deedsOf(plan, potId)
      .filter(({ from = plan.issuedAt, by }) => by !== undefined && by.slice(0, 10) === from.slice(0, 10))
      .filter(({ from = plan.issuedAt, by }) =>
        thunder.some((at) => at + HOUR_MS > Date.parse(from) && at < Date.parse(by!)),
      )
      .map(({ action, from, by }) => `${potId}: ${action} from ${from ?? "now"} to ${by} spans thunder`),
  );
}

function faults(on: { scenario: Scenario; expected: Expected; deeds: readonly Deed[] }): string[] {
  const { expected, deeds } = on;
  const found: string[] = [];
  const actions = deeds.map(({ action }) => action);
  if (expected.first !== undefined && actions[0] !== expected.first)
    found.push(`first should be ${expected.first}`);
  for (const action of expected.asks ?? [])
    if (!actions.includes(action)) found.push(`should ask to ${action}`);
  for (const action of expected.never ?? [])
    if (actions.includes(action)) found.push(`should not ask to ${action}`);
  if (expected.reason !== undefined && !deeds.some(({ reason }) => reason.code === expected.reason)) {
    found.push(`should say ${expected.reason}`);
  }
  if (expected.to !== undefined && !deeds.some(({ toSpotId }) => toSpotId === expected.to)) {
    found.push(`should go to ${expected.to}`);
  }
  if (
    expected.notCarried !== undefined &&
    !deeds.some((deed) => deed.notCarried?.code === expected.notCarried)
  )
    found.push(`should say ${expected.notCarried}`);
  return [...found, ...timeFaults(on)];
}

function timeFaults({ scenario, expected, deeds }: Parameters<typeof faults>[0]): string[] {
  const found: string[] = [];
  const dayOf = (day: number) => new Date(todayOf(scenario) + day * 24 * HOUR_MS).toISOString().slice(0, 10);
  if (expected.before !== undefined) {
    const limit = todayOf(scenario) + (expected.before.day * 24 + expected.before.clock) * HOUR_MS;
    const carry = deeds.find(({ action }) => action === "carry-in");
    if (carry?.by === undefined || Date.parse(carry.by) > limit) found.push("should be in earlier");
  }
  if (expected.notBefore !== undefined) {
    const limit = todayOf(scenario) + (expected.notBefore.day * 24 + expected.notBefore.clock) * HOUR_MS;
    const carry = deeds.find(({ action }) => action === "carry-out");
    if (carry?.from === undefined || Date.parse(carry.from) < limit) found.push("should go out later");
  }
  if (expected.between !== undefined) {
    const { action, day, clocks } = expected.between;
    const by = Date.parse(deeds.find((deed) => deed.action === action)?.by ?? "");
    const at = (clock: number) => todayOf(scenario) + (day * 24 + clock) * HOUR_MS;
    if (!(by >= at(clocks[0]) && by <= at(clocks[1])))
      found.push(
        `should ${action} on day ${day} between ${clocks.join(" and ")}, not by ${new Date(by).toUTCString()}`,
      );
  }
  const dry = deeds.find(({ action }) => action === "keep-dry")?.until;
  if (expected.dryAtLeast !== undefined && (dry === undefined || dry < dayOf(expected.dryAtLeast))) {
    found.push(`should stay dry to ${dayOf(expected.dryAtLeast)}, not ${dry}`);
  }
  if (expected.dryAtMost !== undefined && dry !== undefined && dry > dayOf(expected.dryAtMost)) {
    found.push(`should stay dry no longer than ${dayOf(expected.dryAtMost)}, not ${dry}`);
  }
  return found;
}
