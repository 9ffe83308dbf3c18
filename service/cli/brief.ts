import type { Plan } from "../../core/plan/plan.ts";
import type { Outcome } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import { briefOf } from "../brief/brief.ts";
import { briefText } from "../brief/brief-text.ts";
import { keptTiming } from "../jobs/kept-timing.ts";
import { makePlanNow } from "../jobs/make-plan-now.ts";
import { houseWords } from "../words/house-words.ts";
import { type Kept, siteAsked, withKeptStore } from "./kept-store.ts";
import { print, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type ExitCode, FAILED, type Verb } from "./verb.ts";

const HEADING = "leebench brief";

export const brief: Verb = {
  about: [
    "Prints the newest kept plan as a brief: what to water and with how much, what to keep dry and until when, what to " +
      "carry and by what hour, and why. The store is the one in LEEBENCH_DATA_DIR.",
  ],
  positionals: [],
  options: {
    json: { type: "boolean", about: "print the kept plan itself; leebench schema plan describes it" },
    now: { type: "boolean", about: "make the plan now, pulling the weather first if that is due" },
    site: { type: "string", value: "id", about: "which site, where several are kept" },
  },
  run: ({ options }) =>
    withKeptStore({ heading: HEADING }, async (kept) => {
      const site = await siteAsked(kept.store, options.site as string | undefined);
      if (!site.ok) {
        sayProblems(HEADING, site.problems);
        return site.problems[0]?.code === "no-site-yet" ? FAILED : BAD_INPUT;
      }
      const plan = await (options.now ? planNow(kept, site.value) : planKept(kept, site.value));
      if (!plan.ok) {
        sayProblems(HEADING, plan.problems);
        return FAILED;
      }
      return options.json ? printPlan(plan.value) : printBrief(kept, plan.value);
    }),
};

async function planKept({ store }: Kept, site: Site): Promise<Outcome<Plan>> {
  const plan = await store.plans.latest(site.id);
  if (plan) return { ok: true, value: plan };
  const data = { site: site.id, next: "leebench brief --now makes one" };
  return { ok: false, problems: [{ code: "no-plan-yet", path: ["plans"], data }] };
}

async function planNow({ store, settings }: Kept, site: Site): Promise<Outcome<Plan>> {
  const made = await makePlanNow({ store, siteId: site.id, nowUtcMs: Date.now(), feed: settings.feed });
  if (!made.ok) return made;
  if (made.value.feedProblems.length > 0) sayProblems(`${HEADING}, the feed`, made.value.feedProblems);
  return { ok: true, value: made.value.plan };
}

async function printPlan(plan: Plan): Promise<ExitCode> {
  await print(`${JSON.stringify(plan)}\n`);
  return DONE;
}

async function printBrief({ store, settings }: Kept, plan: Plan): Promise<ExitCode> {
  const words = houseWords((await store.choices.wordChoice()) ?? settings);
  const collection = await store.collection(plan.siteId);
  const timing = await keptTiming(store, { plan, briefAtHour: settings.briefAtHour });
  await print(briefText(briefOf({ plan, collection, words, timing })));
  return DONE;
}
