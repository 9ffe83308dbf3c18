import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Rules of WCAG 2.2 A and AA that axe-core can check by itself, and its own best practice. */
const RULE_SETS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** What axe-core holds against the page by all its rules or by some, one line each: rule, and where. Evaluated, not injected: the policy stands. */
export async function auditPage(page: Page, rules: readonly string[] = []): Promise<string[]> {
  if (!(await page.evaluate("'axe' in globalThis"))) await page.evaluate(AXE);
  const runOnly = rules.length > 0 ? { type: "rule", values: rules } : RULE_SETS;
  const violations = await page.evaluate(async (only) => {
    const { axe } = globalThis as unknown as {
      axe: { run(context: unknown, options: object): Promise<AxeResult> };
    };
    const root = (globalThis as unknown as { document: unknown }).document;
    return (await axe.run(root, { runOnly: only, resultTypes: ["violations"] })).violations;
  }, runOnly);
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`,
  );
}

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly target: readonly string[] }[];
  }[];
}

/** Whether anything sticks out sideways. */
export async function isTooWide(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const { document, innerWidth } = globalThis as unknown as {
      document: { documentElement: { scrollWidth: number } };
      innerWidth: number;
    };
    return document.documentElement.scrollWidth > innerWidth;
  });
}

/** Everything that is tapped; links in running text are not counted. */
const TARGETS =
  "button, select, textarea, summary, .choice, a.button, .log-door, .head nav a, input:not([type=hidden])";

/** Targets lower than a wet thumb needs, one line each; a box in a choice is tapped by the whole choice, and what is folded away counts. Asked in one go: a page has hundreds. */
export async function lowTargets(page: Page): Promise<string[]> {
  return page.evaluate((selector) => {
    const { document } = globalThis as unknown as {
      document: { querySelectorAll(what: string): Iterable<Target> };
    };
    return [...document.querySelectorAll(selector)]
      .filter((target) => target.getClientRects().length > 0 && target.parentElement?.className !== "choice")
      .map((target) => ({ text: target.textContent.trim(), heightPx: target.getBoundingClientRect().height }))
      .filter(({ heightPx }) => heightPx < 47.5)
      .map(({ text, heightPx }) => `low target ${text} ${heightPx}`);
  }, TARGETS);
}

interface Target {
  readonly textContent: string;
  readonly parentElement: { readonly className: string } | null;
  getClientRects(): { readonly length: number };
  getBoundingClientRect(): { readonly height: number };
}
