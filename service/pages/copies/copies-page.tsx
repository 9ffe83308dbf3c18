import type { KeptCopy } from "../../store/kept-copies.ts";
import type { Words } from "../../words/words.ts";

interface CopiesPageProps {
  /** Newest first. */
  readonly kept: readonly KeptCopy[];
  /** Name of the copy that was made just now. */
  readonly made: string;
  readonly canMake: boolean;
  readonly words: Words;
}

const MEGABYTE = 1_000_000;

/** What is kept of the house, how to take it elsewhere, and how to bring it back. */
export function CopiesPage({ kept, made, canMake, words: { say } }: CopiesPageProps) {
  return (
    <>
      <h1>{say("copies.title")}</h1>
      <p class="lead">{say("house.backup-text")}</p>
      {kept.some(({ name }) => name === made) && <p role="status">{say("copies.made", { name: made })}</p>}
      {canMake && (
        <form method="post" action="/house/copies">
          <button type="submit">{say("copies.make")}</button>
        </form>
      )}
      <section>
        <h2>{say("copies.kept")}</h2>
        {kept.length === 0 && <p>{say("status.backup-none")}</p>}
        <ul class="plain">
          {kept.map(({ name, bytes }) => (
            <li>
              <a href={`/house/copies/${name}`}>{name}</a>,{" "}
              {say("copies.size", { sizeMb: Math.ceil((10 * bytes) / MEGABYTE) / 10 })}
            </li>
          ))}
        </ul>
        <p class="hint">{say("copies.bring-back")}</p>
      </section>
      <section>
        <h2>{say("copies.readable")}</h2>
        <p>{say("copies.readable-text")}</p>
        <ul class="plain">
          <li>
            <a href="/house/copies/export.json">{say("copies.export")}</a>
          </li>
          <li>
            <a href="/house/copies/pots.csv">{say("copies.pots")}</a>
          </li>
        </ul>
        <p class="hint">{say("copies.place")}</p>
      </section>
    </>
  );
}
