import { join, resolve } from "node:path";
import { backUp } from "../store/backup.ts";
import { BACKUP_FOLDER_NAME } from "../store/store-names.ts";
import { withKeptStore } from "./kept-store.ts";
import { print } from "./output.ts";
import { DONE, type Verb } from "./verb.ts";

export const backup: Verb = {
  about: [
    "Copies everything that is kept, while it is in use, checks the copy by opening and counting it, and prints where " +
      "it is. Only the newest copies stay, as many as LEEBENCH_BACKUP_KEEP says. The service makes one every night.",
  ],
  positionals: [],
  options: {
    to: {
      type: "string",
      value: "folder",
      about: "where to; the folder backup in LEEBENCH_DATA_DIR when left out",
    },
  },
  run: ({ options }) =>
    withKeptStore({ heading: "leebench backup" }, async ({ store, settings }) => {
      const made = await backUp(store, {
        dir: resolve((options.to as string | undefined) ?? join(settings.dataDir, BACKUP_FOLDER_NAME)),
        nowUtcMs: Date.now(),
        keepCount: settings.backupKeepCount,
      });
      const { site = 0, pot = 0, journal = 0 } = made.counts;
      await print(
        `${made.file}\n${made.bytes} bytes: sites ${site}, pots ${pot}, journal entries ${journal}\n`,
      );
      for (const old of made.removed) await print(`${old} made room for it\n`);
      return DONE;
    }),
};
