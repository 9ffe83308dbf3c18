import { expect, it } from "vitest";
import { sharedRuns } from "../../../service/jobs/shared-runs.ts";

function bench() {
  const started: string[] = [];
  const ends: (() => void)[] = [];
  const run = sharedRuns(async (key) => {
    const number = started.push(key);
    await new Promise<void>((end) => ends.push(end));
    return `${key} ${number}`;
  });
  const settle = () => new Promise((resolve) => setImmediate(resolve));
  return { run, started, ends, settle };
}

it("those who ask while a run is under way share the next one", async () => {
  const { run, started, ends, settle } = bench();
  const first = run("yard");
  const others = [run("yard"), run("yard"), run("yard")];
  await settle();
  expect(started).toEqual(["yard"]);
  ends[0]!();
  expect(await first).toBe("yard 1");
  await settle();
  expect(started).toEqual(["yard", "yard"]);
  ends[1]!();
  expect(await Promise.all(others)).toEqual(["yard 2", "yard 2", "yard 2"]);
});

it("keys do not wait for each other, and an idle key starts at once", async () => {
  const { run, started, ends } = bench();
  const both = [run("yard"), run("roof")];
  expect(started).toEqual(["yard", "roof"]);
  for (const end of ends) end();
  await Promise.all(both);
  void run("yard");
  expect(started).toHaveLength(3);
});

it("a run that broke does not keep the next from starting", async () => {
  let runs = 0;
  const run = sharedRuns(async () => {
    runs++;
    if (runs === 1) throw new Error("broke");
    return runs;
  });
  const first = run("yard");
  const second = run("yard");
  await expect(first).rejects.toThrow("broke");
  expect(await second).toBe(2);
});
