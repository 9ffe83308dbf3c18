import fc from "fast-check";
import { expect, it } from "vitest";
import { readSettings } from "../../../service/config.ts";
import { SETTING_NAMES } from "../../../service/environment-schema.ts";
import { settingFaultLines } from "../../../service/setting-faults.ts";

it("whatever stands in the environment, there are settings or a line for every fault", () => {
  const env = fc.dictionary(fc.constantFrom(...SETTING_NAMES, "LEEBENCH_X"), fc.string());
  fc.assert(
    fc.property(env, (given) => {
      const read = readSettings(given);
      if (read.ok) return;
      expect(read.problems.length).toBeGreaterThan(0);
      for (const line of settingFaultLines(read.problems)) expect(line).toMatch(/^LEEBENCH_[A-Z_]+: \S.*\.$/);
    }),
  );
});
