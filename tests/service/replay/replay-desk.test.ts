import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type DeskState, type ReplayDesk, replayDesk } from "../../../service/replay/replay-desk.ts";

const ASK = { placeId: "seattle", year: 2014 };

describe("the desk where a year is asked for", () => {
  let dataDir = "";
  beforeEach(async () => {
    dataDir = await mkdtemp(join(tmpdir(), "desk-"));
  });
  afterEach(() => rm(dataDir, { recursive: true }));

  const ended = async (desk: ReplayDesk): Promise<DeskState> => {
    for (;;) {
      const state = await desk.state();
      if (state.kind !== "running") return state;
      await new Promise((soon) => setTimeout(soon, 20));
    }
  };

  it("says at once that the year is being played, and keeps its outcome", async () => {
    const desk = replayDesk({ dataDir, command: () => ["-e", "console.log('{}')"] });
    expect(await desk.state()).toEqual({ kind: "none" });
    desk.start(ASK);
    expect(await desk.state()).toEqual({ kind: "running", ask: ASK, doneFrac: 0 });
    expect(await ended(desk)).toEqual({ kind: "done", ask: ASK, report: {} });
  });

  it("says what broke it", async () => {
    const script = `process.stderr.write('{"code":"pot-not-planted"}\\n'); process.exit(1)`;
    const desk = replayDesk({ dataDir, command: () => ["-e", script] });
    desk.start(ASK);
    expect(await ended(desk)).toEqual({ kind: "failed", ask: ASK, codes: ["pot-not-planted"] });
  });
});
