import { join } from "node:path";
import { expect, it } from "vitest";
import { plan } from "../../../core/plan/make-plan.ts";
import { makePlanNow } from "../../../service/jobs/make-plan-now.ts";
import { planTools } from "../../../service/jobs/plan-tools.ts";
import { openStore } from "../../../service/store/open-store.ts";
import { STORE_NAME } from "../../../service/store/store-names.ts";
import { house } from "../jobs/bench-jobs.ts";
import { pot } from "../store/bench.ts";
import { tempFolder } from "../store/test-store.ts";
import { commandHere } from "./command-here.ts";
import { problemsIn } from "./run-command.ts";

it("a plan told long ago is explained from what was known then", async () => {
  const dataDir = tempFolder();
  const store = await openStore(join(dataDir, STORE_NAME));
  const { parts, clock } = await house({ store, plan });
  const settle = async () => ({ kind: "morning" as const, messages: [] });
  const made = await makePlanNow({ ...planTools(parts), siteId: "yard", nowUtcMs: clock.nowUtcMs, settle });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  await store.pots.put("yard", pot({ name: "Renamed since" }));
  await store.close();

  const why = (...args: string[]) => commandHere(["why", ...args], { env: { LEEBENCH_DATA_DIR: dataDir } });
  const then = await why("Lemon", "--on", "2031-05-02", "--json");
  expect([then.code, then.stderr]).toEqual([0, ""]);
  expect(JSON.parse(then.stdout).row).toEqual(JSON.parse(JSON.stringify(made.value.plan.pots[0])));
  const none = await why("Lemon", "--on", "2031-05-03");
  expect([none.code, problemsIn(none.stderr).map(({ code }) => code)]).toEqual([2, ["no-plan-that-day"]]);
});
