import { join } from "node:path";
import { listBackups } from "../store/backup.ts";
import { forgetPerson } from "../store/forget-person.ts";
import { BACKUP_FOLDER_NAME } from "../store/store-names.ts";
import { withKeptStore } from "./kept-store.ts";
import { print, say, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type Verb } from "./verb.ts";

const HEADING = "leebench forget";

export const forget: Verb = {
  about: [
    "Lets go of a person: the ways by which messages went to them, those messages, their sign-in, and their name in the " +
      "words of the journal, where it says somebody instead. What was done to the pots stays. There is no way back but " +
      "a backup.",
  ],
  positionals: [{ name: "name", about: "as it stands among the people of the house" }],
  options: {},
  run: ({ words }) =>
    withKeptStore({ heading: HEADING }, async ({ store, settings }) => {
      const gone = await forgetPerson(store, words[0]!);
      if (!gone.ok) {
        sayProblems(HEADING, gone.problems);
        return BAD_INPUT;
      }
      const { ways, messages, sessions, entries } = gone.value;
      await print(
        `Let go of: ways ${ways}, messages ${messages}, devices signed in ${sessions}, journal entries with the name ${entries}\n`,
      );
      const copies = listBackups(join(settings.dataDir, BACKUP_FOLDER_NAME)).length;
      if (copies > 0)
        say(
          `${copies} backups from before still hold the person. They make room for new ones night by night; delete them to be sooner.`,
        );
      return DONE;
    }),
};
