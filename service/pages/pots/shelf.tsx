import type { Collection } from "../../../core/plan/collection.ts";
import type { Words } from "../../words/words.ts";
import { needText } from "./next-need.ts";
import type { PotStand } from "./pot-stand.ts";
import { SectionOf, type SectionOfProps } from "./section-of.tsx";
import { isNarrowed, mayBeWatered, type ShelfView } from "./shelf-view.ts";

export interface ShelfProps {
  readonly name: string;
  /** Left out where pots of several benches stand on the shelf. */
  readonly spotId?: string;
  readonly stands: readonly PotStand[];
  readonly pxPerCm: number;
  /** Pots that were ticked in a form that could not be kept. */
  readonly tickedIds: ReadonlySet<string>;
  readonly view: ShelfView;
  readonly collection: Collection;
  readonly words: Words;
}

/** A bench as a shelf of vessels, or all of them in one row. */
export function Shelf({ name, spotId, stands, pxPerCm, tickedIds, view, collection, words }: ShelfProps) {
  const scale = { pxPerCm, lineMm: 6, mostAboveCm: 30 };
  const benchOf = (id: string) => collection.spots.find((spot) => spot.id === id)?.name ?? id;
  return (
    <section>
      <h2>{name}</h2>
      {/* biome-ignore lint/a11y/useSemanticElements: ul and ol take nothing between themselves and what they list */}
      <div class={`shelf shelf-${alikeCount(stands.length)}`} role="list">
        {boardsOf(stands).map((board) => (
          <div class="boards">
            {board.map((stand) => (
              <PotOnShelf
                stand={stand}
                scale={scale}
                isTicked={tickedIds.has(stand.pot.id)}
                bench={spotId === undefined ? benchOf(stand.spotId) : null}
                words={words}
              />
            ))}
          </div>
        ))}
      </div>
      {spotId !== undefined && !isNarrowed(view) && (
        <WholeBench name={name} spotId={spotId} stands={stands} words={words} />
      )}
    </section>
  );
}

/** An even number, since a phone has two abreast: three boards, about what its window shows. */
const POTS_AT_ONCE = 6;

/** What a phone lays out at once. One list all the same: what reads the page aloud passes over the boards. */
function boardsOf(stands: readonly PotStand[]): PotStand[][] {
  return Array.from({ length: Math.ceil(stands.length / POTS_AT_ONCE) }, (_, board) =>
    stands.slice(board * POTS_AT_ONCE, (board + 1) * POTS_AT_ONCE),
  );
}

/** The number of pots that a shelf not yet laid out keeps room for: the style sheet knows a few. */
function alikeCount(potCount: number): number {
  return Math.min(128, 2 ** Math.ceil(Math.log2(Math.max(8, potCount))));
}

interface PotOnShelfProps extends Pick<SectionOfProps, "stand" | "scale" | "words"> {
  /** Told where pots of several benches stand together. */
  readonly bench: string | null;
  readonly isTicked: boolean;
}

/** Few elements and few words: a page has hundreds of them. */
function PotOnShelf({ stand, scale, bench, isTicked, words }: PotOnShelfProps) {
  const { pot } = stand;
  const { say } = words;
  return (
    // biome-ignore lint/a11y/useSemanticElements: li stands in ul or ol only
    <div role="listitem">
      <SectionOf stand={stand} scale={scale} words={words} />
      <p>
        <a href={`/pots/${encodeURIComponent(pot.id)}`}>
          {say("deed.pots", { name: pot.name, potCount: pot.count ?? 1 })}
        </a>{" "}
        {needText(stand.need, words)}
        {bench !== null && (
          <>
            <br />
            <span class="hint">{bench}</span>
          </>
        )}
      </p>
      <label class="choice">
        <input
          type="checkbox"
          name="potId"
          value={pot.id}
          checked={isTicked}
          aria-label={`${say("pots.choose")} ${pot.name}`}
        />
        {say("pots.choose")}
      </label>
    </div>
  );
}

/** One tap for a bench that was watered, its pots that are kept dry left out. */
function WholeBench(props: Pick<ShelfProps, "name" | "stands" | "words"> & { spotId: string }) {
  const {
    name,
    spotId,
    stands,
    words: { say },
  } = props;
  const watered = mayBeWatered(stands, spotId).length;
  if (watered < 2) return null;
  const key = watered < stands.length ? "pots.watered-bench.but-dry" : "pots.watered-bench";
  return (
    <p>
      <button type="submit" name="wateredSpotId" value={spotId} class="quiet">
        {say(key, { potCount: watered, spot: name })}
      </button>
    </p>
  );
}
