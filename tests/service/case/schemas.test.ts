import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { demoCase } from "../../../demo/demo-case.ts";
import { CaseSchema } from "../../../service/case/case-schema.ts";
import { writeCase } from "../../../service/case/write-case.ts";
import { writtenCase } from "./case-builder.ts";

/** The printed schema is read by an independent validator, as a stranger would. */
function validator() {
  const ajv = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true, validateFormats: false });
  return ajv.compile(z.toJSONSchema(CaseSchema, { io: "input" }));
}

describe("the printed schema of a case", () => {
  it("accepts the demonstration's case and a small one", async () => {
    const demo = await demoCase(Date.UTC(2031, 6, 9, 10, 20));
    if (!demo.ok) throw new Error(JSON.stringify(demo.problems));
    const valid = validator();
    expect(valid(JSON.parse(JSON.stringify(writeCase(demo.value)))) || valid.errors).toBe(true);
    expect(valid(writtenCase()) || valid.errors).toBe(true);
  });

  it.each<[string, (written: ReturnType<typeof writtenCase>) => unknown]>([
    ["an unknown key", (written) => ({ ...written, extra: 1 })],
    ["no weather", ({ weather: _gone, ...rest }) => rest],
    ["a local time", (written) => ({ ...written, today: "2031-03-05 06:00" })],
  ])("refuses %s", (_what, change) => {
    expect(validator()(change(structuredClone(writtenCase())))).toBe(false);
  });
});
