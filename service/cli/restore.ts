import { existsSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { restore as restoreStore } from "../store/restore.ts";
import { BACKUP_FOLDER_NAME } from "../store/store-names.ts";
import { withSettings } from "./kept-store.ts";
import { print, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type Verb } from "./verb.ts";

const HEADING = "leebench restore";

export const restore: Verb = {
  about: [
    "Puts a backup in the place of what is kept in LEEBENCH_DATA_DIR. Stop the service first. The backup is checked " +
      "before anything is touched, and what was there is set aside, not lost.",
  ],
  positionals: [
    { name: "file", about: "a backup as leebench backup prints it, or the name of a nightly one" },
  ],
  options: {},
  run: ({ words }) =>
    withSettings(HEADING, async ({ dataDir }) => {
      const backupFile = fileOf(words[0]!, dataDir);
      if (!existsSync(backupFile)) {
        sayProblems(HEADING, [{ code: "no-such-file", path: ["<file>"], data: { given: backupFile } }]);
        return BAD_INPUT;
      }
      const restored = await restoreStore({ backupFile, dataDir, nowUtcMs: Date.now() });
      const { site = 0, pot = 0, journal = 0 } = restored.counts;
      await print(`${dataDir} now holds sites ${site}, pots ${pot}, journal entries ${journal}\n`);
      if (restored.setAside) await print(`What was there before is in ${restored.setAside}\n`);
      return DONE;
    }),
};

/** A copy of the nightly ones may be named by its name alone, as the page of copies lists it. */
function fileOf(given: string, dataDir: string): string {
  const kept = join(dataDir, BACKUP_FOLDER_NAME, given);
  return basename(given) === given && !existsSync(given) && existsSync(kept) ? kept : resolve(given);
}
