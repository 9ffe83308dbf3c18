import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { SOURCES } from "../../../core/sources.ts";
import type { Words } from "../../words/words.ts";

interface Borrowed {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}

const OWN = JSON.parse(readFileSync(new URL("../../../package.json", import.meta.url), "utf8")) as {
  version: string;
  license: string;
  dependencies: Record<string, string>;
};

/** Libraries that run in the service, with the licence each names. */
const BORROWED: readonly Borrowed[] = Object.keys(OWN.dependencies).map((name) => {
  const { version, license } = packageOf(name);
  return { name, version, licence: license ?? "" };
});

/** A package's own description stands at the root of its folder, whatever it exports. */
function packageOf(name: string): { version: string; license?: string } {
  const folders = createRequire(import.meta.url).resolve.paths(name) ?? [];
  for (const folder of folders) {
    try {
      return JSON.parse(readFileSync(`${folder}/${name}/package.json`, "utf8"));
    } catch {
      // Not in this folder; the next one up may have it.
    }
  }
  return { version: OWN.dependencies[name] ?? "" };
}

/** Whose work this rests on: publications and libraries. */
export function About({ words: { say } }: { words: Words }) {
  return (
    <>
      <section>
        <h2>{say("house.about")}</h2>
        <p>{say("house.about-text", { version: OWN.version, licence: OWN.license })}</p>
      </section>
      <details class="log">
        <summary>
          <h2>{say("house.sources")}</h2>
        </summary>
        <ul>
          {Object.values(SOURCES).map(({ authors, title, year, place }) => (
            <li>
              {authors} ({year}). {title}. {place}.
            </li>
          ))}
        </ul>
      </details>
      <details class="log">
        <summary>
          <h2>{say("house.libraries")}</h2>
        </summary>
        <ul>
          {BORROWED.map(({ name, version, licence }) => (
            <li>
              {name} {version}, {licence}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
