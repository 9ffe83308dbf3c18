import type { Problem } from "../core/problem.ts";
import { PASSPHRASE_LEAST_CHARS, PASSPHRASE_MOST_CHARS, SETTING_NAMES } from "./environment-schema.ts";

/** One line a fault in the settings: what is wrong and what to do next. The value itself is never repeated: it may be a secret. */
export function settingFaultLines(problems: readonly Problem[]): string[] {
  return problems.map((problem) => `${problem.path[0]}: ${sentence(problem)}`);
}

type Data = Readonly<Record<string, unknown>>;

const SENTENCES: Readonly<Record<string, (data: Data, name: string) => string>> = {
  "setting-unknown": (_, name) =>
    `no such setting. ${nearest(name) ? `Did you mean ${nearest(name)}? ` : ""}Correct the name or remove it.`,
  "setting-not-a-url": ({ schemes }) =>
    `not a whole address. Give one that begins with ${list(schemes, "//")}, for example ${list(schemes, "//", 1)}host.example.`,
  "setting-not-in-range": ({ from, to }) => `give a whole number from ${from} to ${to}.`,
  "setting-not-a-host": () =>
    "not a host. Give a name or an address without scheme or port, such as 127.0.0.1.",
  "setting-not-a-mail-address": () =>
    "not a mail address. Give addresses such as bench@host.example, several separated by commas.",
  "setting-not-a-model-name": () => "not a model name. Use small letters, digits and underscores only.",
  "setting-not-a-clock-time": () => "give a time in the morning from 00:00 to 11:59, such as 05:30.",
  "setting-not-a-locale": () => "not a language tag. Give one such as en-GB or de.",
  "setting-not-one-of": ({ values }) => `give one of ${list(values)}.`,
  "passphrase-too-short": () => `too short. Give at least ${PASSPHRASE_LEAST_CHARS} characters.`,
  "mail-setting-missing": () =>
    "missing. Mail needs LEEBENCH_SMTP_URL and LEEBENCH_MAIL_FROM: set both, or neither.",
  "passphrase-too-long": () => `too long. Give at most ${PASSPHRASE_MOST_CHARS} characters.`,
  "setting-not-a-range": () =>
    "not addresses. Give addresses or ranges such as 172.18.0.0/16, several separated by commas.",
  "setting-not-a-topic": () => "not a topic. Give one without spaces, # and +, such as leebench.",
  "setting-not-a-path": () => "not a path. Give one that begins with a slash, such as /bench.",
};

function sentence(problem: Problem): string {
  const make = SENTENCES[problem.code];
  return make
    ? make(problem.data ?? {}, String(problem.path[0]))
    : "not understood. Correct it or remove it.";
}

function list(values: unknown, after = "", count = 9): string {
  return Array.isArray(values)
    ? values
        .slice(0, count)
        .map((value) => `${value}${after}`)
        .join(" or ")
    : "";
}

/** The known name with the fewest letter pairs of difference, when it is near enough to be a slip. */
function nearest(name: string): string | undefined {
  const scored = SETTING_NAMES.map((known) => ({ known, share: sharedPairFrac(known, name) }));
  const best = scored.sort((a, b) => b.share - a.share)[0];
  return best && best.share > 0.7 ? best.known : undefined;
}

function sharedPairFrac(a: string, b: string): number {
  const pairs = (text: string) => new Set(Array.from(text.slice(0, -1), (_, i) => text.slice(i, i + 2)));
  const [left, right] = [pairs(a), pairs(b)];
  const shared = [...left].filter((pair) => right.has(pair)).length;
  return (2 * shared) / (left.size + right.size);
}
