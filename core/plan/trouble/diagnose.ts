import type { JournalEntry, TroubleSign } from "../../journal/entry.ts";
import { instantOf } from "../../site/instant.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { AvoidCode, CauseCode, CheckCode, Diagnosis } from "../pot-plan.ts";
import { roundTo } from "../rows/round-to.ts";
import { AVOID_IF, CAUSES_BY_SIGN, CHECK_FOR } from "./cause-table.ts";
import { type Findings, findingsOf } from "./findings.ts";

/** Days for which a sign is taken as still standing. Chosen by us. */
const LATELY_DAYS = 10;
const DAY_MS = 86_400_000;
/** Causes less likely than this are not told, and do not forbid anything. Chosen by us. */
const WORTH_TELLING_FRAC = 0.12;
const FORBIDS_FRAC = 0.2;

/** Signs of trouble that the grower noted of late, each read against the pot's state; newest first. */
export function diagnose(input: {
  study: PotStudy;
  /** Settled entries of this pot. */
  entries: readonly JournalEntry[];
  nowUtcMs: number;
}): Diagnosis[] {
  const { study, nowUtcMs } = input;
  const found = findingsOf(study, nowUtcMs);
  const seen = new Set<TroubleSign>();
  return [...input.entries]
    .filter(({ atUtcMs }) => atUtcMs <= nowUtcMs && atUtcMs > nowUtcMs - LATELY_DAYS * DAY_MS)
    .sort((a, b) => b.atUtcMs - a.atUtcMs || (a.id < b.id ? -1 : 1))
    .flatMap(({ body, atUtcMs }) => {
      if (body.kind !== "trouble" || seen.has(body.sign)) return [];
      seen.add(body.sign);
      return [{ sign: body.sign, notedAt: instantOf(atUtcMs), ...readSign(body.sign, found) }];
    });
}

/** Likely causes of a sign, the check that tells the first two apart, and what not to do meanwhile. */
export function readSign(sign: TroubleSign, found: Findings): Pick<Diagnosis, "causes" | "check" | "avoid"> {
  const weights = Object.entries(CAUSES_BY_SIGN[sign]) as [CauseCode, (found: Findings) => number][];
  const raw = weights.map(([code, weigh]) => ({ code, weight: weigh(found) }));
  if (found.holeBlocked > 0 && sign !== "pests") raw.push({ code: "blocked-hole", weight: 1.5 });
  const total = raw.reduce((sum, { weight }) => sum + weight, 0);
  const causes = raw
    .map(({ code, weight }) => ({ code, shareFrac: total > 0 ? roundTo(weight / total, 0.01) : 0 }))
    .sort((a, b) => b.shareFrac - a.shareFrac || (a.code < b.code ? -1 : 1))
    .filter(({ shareFrac }, i) => i === 0 || shareFrac >= WORTH_TELLING_FRAC);
  const avoid = causes
    .filter(({ shareFrac }, i) => i === 0 || shareFrac >= FORBIDS_FRAC)
    .flatMap(({ code }) => AVOID_IF[code]);
  return { causes, check: checkBetween(causes), avoid: withoutContradiction(avoid, causes[0]!.code) };
}

/** Wet or dry below is told by a stick at the base; everything else by the check for the likeliest cause. */
function checkBetween(causes: readonly { code: CauseCode }[]): CheckCode {
  const [first, second] = causes;
  const both = new Set([first?.code, second?.code]);
  const wet = both.has("wet-roots") || both.has("cold-wet-rot");
  if (both.has("thirst") && wet) return "stick-to-the-base";
  return CHECK_FOR[first!.code];
}

/** A plant that is most likely thirsty is not told to go without water for the sake of a lesser cause. */
function withoutContradiction(avoid: readonly AvoidCode[], likeliest: CauseCode): AvoidCode[] {
  const unique = [...new Set(avoid)];
  return likeliest === "thirst" || likeliest === "sheds-water"
    ? unique.filter((code) => code !== "water")
    : unique;
}
