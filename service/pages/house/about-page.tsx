import { readFileSync } from "node:fs";
import { SOURCES } from "../../../core/sources.ts";
import { type Borrowed, borrowedFromLock } from "../../about/borrowed-work.ts";
import { CHANGES, type Release } from "../../about/changes.ts";
import { type Outgoing, outgoingToFeeds } from "../../about/leaves-house.ts";
import { VERSION } from "../../version.ts";
import type { Words } from "../../words/words.ts";
import type { PageContext } from "../page-context.ts";

const LOCK = new URL("../../../package-lock.json", import.meta.url);
const OWN_LICENCE = "MIT";

/** What leaves the house and to whom, what changed in the advice, and whose work all this rests on. */
export async function AboutPage({ context }: { context: PageContext }) {
  const { say } = context.words;
  const ways = await context.post.ways();
  const addresses = ways.flatMap(({ channel }) => channel.to ?? []);
  return (
    <>
      <h1>{say("house.about")}</h1>
      <p>{say("house.about-text", { version: VERSION, licence: OWN_LICENCE })}</p>
      <Leaving words={context.words} outgoing={outgoingToFeeds(context.feed)} addresses={addresses} />
      <section>
        <h2>{say("about.changes")}</h2>
        {CHANGES.map((release) => (
          <ReleaseLines release={release} words={context.words} />
        ))}
      </section>
      <Folded heading={say("house.sources")} lines={SOURCE_LINES} />
      <Folded heading={say("house.libraries")} lines={borrowed().map(libraryLine)} />
    </>
  );
}

function Leaving({
  words: { say },
  outgoing,
  addresses,
}: {
  words: Words;
  outgoing: readonly Outgoing[];
  addresses: readonly string[];
}) {
  return (
    <section>
      <h2>{say("about.leaves")}</h2>
      <p>{say("about.leaves-lead")}</p>
      <ul>
        {outgoing.map(({ what, host }) => (
          <li>{say(`about.leaves.${what}`, { host })}</li>
        ))}
        {[...new Set(addresses)].map((address) => (
          <li>{say("about.leaves.messages", { address })}</li>
        ))}
      </ul>
      <p>{say("about.leaves-rest")}</p>
    </section>
  );
}

/** The program's own history stands in the language in which it is written. */
function ReleaseLines({ release, words: { say } }: { release: Release; words: Words }) {
  const { version, day, advice, other } = release;
  return (
    <>
      <h3>{day === null ? version : `${version}, ${day}`}</h3>
      {day === null && <p>{say("about.changes-making")}</p>}
      <p>{say("about.changes-advice")}</p>
      <ul lang="en">
        {advice.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
      <p>{say("about.changes-other")}</p>
      <ul lang="en">
        {other.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
    </>
  );
}

function Folded({ heading, lines }: { heading: string; lines: readonly string[] }) {
  return (
    <details class="log">
      <summary>
        <h2>{heading}</h2>
      </summary>
      <ul>
        {lines.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
    </details>
  );
}

const SOURCE_LINES = Object.values(SOURCES).map(
  ({ authors, title, year, place }) => `${authors} (${year}). ${title}. ${place}.`,
);

let known: readonly Borrowed[] | null = null;

/** Read when first asked for: the lock file is large and few look. */
function borrowed(): readonly Borrowed[] {
  known ??= borrowedFromLock(readFileSync(LOCK, "utf8"));
  return known;
}

function libraryLine({ name, version, licence }: Borrowed): string {
  return `${name} ${version}, ${licence}`;
}
