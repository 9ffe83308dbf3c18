import type { Deed } from "../../core/plan/deed.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";
import type { Words } from "../words/words.ts";
import type { BriefDeed } from "./brief-value.ts";
import { asksForHands } from "./due-day.ts";
import type { Naming } from "./naming.ts";
import { reasonInShort, reasonLine } from "./reason-line.ts";

/** One deed of one pot in words. */
export function deedLine(input: { potPlan: PotPlan; deed: Deed; naming: Naming }): BriefDeed {
  const { potPlan, deed, naming } = input;
  const { words } = naming;
  const parts = {
    amount: amountText(deed, potPlan, naming),
    place:
      deed.toSpotId === undefined ? null : words.say("deed.to", { place: naming.spotName(deed.toSpotId) }),
    hour: hourText(deed, naming),
  };
  const verb = words.say(verbKey(deed, naming));
  const pot = naming.potName(potPlan.potId);
  const due = deed.by ?? deed.from;
  const how = howNotes(deed, naming);
  const care = [...liftNotes(deed, naming), ...sapNotes({ potPlan, deed, naming })];
  return {
    potId: potPlan.potId,
    action: deed.action,
    verb,
    pot,
    potCount: potPlan.count,
    ...parts,
    figure: deed.amountMl === undefined ? null : (words.figure("waterMl", deed.amountMl) ?? null),
    amountMl: deed.amountMl ?? null,
    untilItRunsThrough: deed.untilItRunsThrough ?? false,
    toSpotId: deed.toSpotId ?? null,
    dueUtcMs: due === undefined ? null : Date.parse(due),
    reason: reasonLine(deed.reason, naming),
    reasonInShort: reasonInShort(deed.reason, naming),
    confidence: words.say(`confidence.${deed.confidence.word}`),
    notes: [
      ...how,
      ...(deed.notCarried ? [reasonLine(deed.notCarried, naming)] : []),
      ...chanceNotes(deed, naming),
      ...care,
    ],
    handling: [...how, ...care],
    sentence: words.say("deed.sentence", {
      verb,
      details: [pot, parts.amount, parts.place, parts.hour].filter((part) => part !== null).join(", "),
    }),
  };
}

/** A cover against cold is another thing than one against rain. */
function isWrap({ action, reason }: Deed): boolean {
  return action === "top-cover" && reason.code === "cold-night";
}

function verbKey(deed: Deed, { isOpen }: Naming) {
  if (isWrap(deed)) return "verb.top-cover.cold";
  const toShelter = deed.action === "carry-in" && deed.toSpotId !== undefined && isOpen(deed.toSpotId);
  return toShelter ? "verb.carry-in.open" : (`verb.${deed.action}` as const);
}

/** How it is done, where the verb alone does not say. */
function howNotes(deed: Deed, { words }: Naming): string[] {
  if (deed.action === "water" && deed.amountMl !== undefined && !deed.untilItRunsThrough)
    return [words.say("deed.only-so-much")];
  if (isWrap(deed)) return wrapNotes(deed, words);
  if (deed.reason.code === "sun-by-steps") return [words.say("how.shade.by-steps")];
  const how = words.trySay(`how.${deed.action}`);
  return how === undefined ? [] : [how];
}

/** A night that kills needs more than a cloth. */
function wrapNotes({ reason }: Deed, words: Naming["words"]): string[] {
  const cloth = words.say("how.top-cover.cold");
  return reason.numbers.kills === "yes" ? [cloth, words.say("how.top-cover.deadly")] : [cloth];
}

/** Less likely than not and still asked for: why. */
function chanceNotes(deed: Deed, { words }: Naming): string[] {
  const { word, shareFrac } = deed.confidence;
  return word === "unlikely" && asksForHands(deed) ? [words.say("deed.small-chance", { shareFrac })] : [];
}

function amountText(deed: Deed, { count }: PotPlan, { words }: Naming): string | null {
  if (deed.action !== "water" && deed.action !== "soak-slowly") return null;
  const { amountMl = null, untilItRunsThrough = false } = deed;
  return waterText({ amountMl, untilItRunsThrough, isEach: count > 1 }, words);
}

/** How much is poured, and whether each of several gets so much. */
export function waterText(
  {
    amountMl: waterMl,
    untilItRunsThrough,
    isEach,
  }: Pick<BriefDeed, "amountMl" | "untilItRunsThrough"> & { readonly isEach: boolean },
  words: Words,
): string | null {
  if (waterMl === null) return untilItRunsThrough ? words.say("deed.through") : null;
  if (untilItRunsThrough)
    return words.say(isEach ? "deed.amount-through-each" : "deed.amount-through", { waterMl });
  return words.say(isEach ? "deed.amount-each" : "deed.amount", { waterMl });
}

const HOUR_MS = 3_600_000;
/** A span this long leaves the day open, so only the end that binds is said. Chosen by us. */
const OPEN_DAY_MS = 8 * HOUR_MS;

function hourText(deed: Deed, naming: Naming): string | null {
  const { words, when } = naming;
  const { from, by } = bindingHours(deed, naming);
  if (from !== undefined && by !== undefined)
    return words.say("deed.between", { from: when(from), by: when(by) });
  if (by !== undefined) return words.say("deed.by", { time: when(by) });
  return from === undefined ? null : words.say("deed.from", { time: when(from) });
}

/** Without a beginning that has passed, and without the end that does not matter where the whole day is open. */
function bindingHours({ action, from, by, reason }: Deed, { plan }: Naming): Pick<Deed, "from" | "by"> {
  if (from === undefined || by === undefined) return { ...(from && { from }), ...(by && { by }) };
  if (Date.parse(from) < Date.parse(plan.issuedAt) + HOUR_MS) return { by };
  if (Date.parse(by) - Date.parse(from) < OPEN_DAY_MS) return { from, by };
  // Shade by steps goes out with its pot.
  return action === "carry-out" || reason.code === "sun-by-steps" ? { from } : { by };
}

function liftNotes(deed: Deed, { words }: Naming): string[] {
  if (!deed.lift || deed.lift.hands === "one") return [];
  return [words.say(`deed.lift.${deed.lift.hands}`, { massKg: deed.lift.massKg })];
}

/** Deeds in which the plant is not touched. */
const HANDS_OFF: ReadonlySet<Deed["action"]> = new Set([
  "water",
  "soak-slowly",
  "keep-dry",
  "none",
  "shade",
  "empty-saucer",
]);

function sapNotes({ potPlan, deed, naming }: { potPlan: PotPlan; deed: Deed; naming: Naming }): string[] {
  const hasSap = naming.plan.cautions.some(
    ({ code, potIds }) => code === "sap" && potIds.includes(potPlan.potId),
  );
  return hasSap && !HANDS_OFF.has(deed.action) ? [naming.words.say("deed.sap")] : [];
}
