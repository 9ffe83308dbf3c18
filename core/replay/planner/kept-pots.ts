import type { JournalEntry } from "../../journal/entry.ts";
import { componentsById } from "../../mix/library.ts";
import type { Settings } from "../../plan/settings.ts";
import { type PotNow, potNowOf } from "../../pot/pot-now.ts";
import type { PotState } from "../../pot/replay/pot-state.ts";
import { replay } from "../../pot/replay/replay.ts";
import type { ReplayContext } from "../../pot/replay/replay-context.ts";
import type { SpotForcing } from "../../site/forcing.ts";
import type { SpotId } from "../../site/spot.ts";
import type { KnownPot, Stage } from "../world/known-pot.ts";

/**
 * The planner's pots kept on from morning to morning: the same as replaying the journal from its beginning, for a small
 * part of the time.
 */
export class KeptPots {
  readonly #contexts: readonly ReplayContext[];
  readonly #states: (PotState | undefined)[];
  readonly #waiting: JournalEntry[][];

  constructor(of: {
    stage: Stage;
    known: readonly KnownPot[];
    settings: Settings;
    past: ReadonlyMap<SpotId, SpotForcing>;
  }) {
    const shared = {
      latDeg: of.stage.site.latDeg,
      settings: of.settings,
      mixes: new Map(of.stage.mixes.map((mix) => [mix.id, mix])),
      components: componentsById(of.stage.ownComponents),
      past: of.past,
    };
    this.#contexts = of.known.map(({ pot, values }) => ({ ...shared, pot, values }));
    this.#states = of.known.map(() => undefined);
    this.#waiting = of.known.map(() => []);
  }

  note(entries: readonly JournalEntry[]): void {
    for (const entry of entries) {
      const index = this.#contexts.findIndex(({ pot }) => pot.id === entry.potId);
      this.#waiting[index]?.push(entry);
    }
  }

  /** Every pot as it stands at a whole hour; those that are not planted are left out. */
  at(nowUtcMs: number): PotNow[] {
    return this.#contexts.flatMap((context, i) => {
      const events = this.#waiting[i]!.filter(({ atUtcMs }) => atUtcMs <= nowUtcMs);
      this.#waiting[i] = this.#waiting[i]!.filter(({ atUtcMs }) => atUtcMs > nowUtcMs);
      const from = this.#states[i];
      const state = replay(
        { events, untilUtcMs: nowUtcMs, ...(from === undefined ? {} : { from }) },
        context,
      );
      this.#states[i] = state;
      const now = potNowOf(state, { context, gone: false, nowUtcMs });
      return now === null ? [] : [now];
    });
  }
}
