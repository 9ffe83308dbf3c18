import type { StandIn } from "../../plan/plan.ts";

/** One rung of the ladder: what stands in, and what it costs in certainty. */
export interface Rung {
  readonly quantity: StandIn["quantity"];
  /** Code; the words stand in the catalogue. */
  readonly method: string;
  readonly errorEstimate: number;
}

/** Marks, by rung, the hours that it filled. */
export class Tally {
  readonly #hourCount: number;
  readonly #marks = new Map<Rung, Uint8Array>();

  constructor(hourCount: number) {
    this.#hourCount = hourCount;
  }

  mark(rung: Rung, hour: number): void {
    let marks = this.#marks.get(rung);
    if (!marks) {
      marks = new Uint8Array(this.#hourCount);
      this.#marks.set(rung, marks);
    }
    marks[hour] = 1;
  }

  has(rung: Rung, hour: number): boolean {
    return this.#marks.get(rung)?.[hour] === 1;
  }

  /**
   * The stand-ins that were used. The share is that of the hours from `nowHour` to `endHour`; where only hours before
   * them were filled, the share of those.
   */
  standIns(span: { nowHour: number; endHour: number }): StandIn[] {
    const found: StandIn[] = [];
    for (const [rung, marks] of this.#marks) {
      const ahead = shareMarked(marks, span.nowHour, span.endHour);
      const share = ahead > 0 ? ahead : shareMarked(marks, 0, span.nowHour);
      if (share > 0) found.push({ ...rung, shareOfHoursFrac: share });
    }
    return found;
  }
}

function shareMarked(marks: Uint8Array, from: number, to: number): number {
  if (to <= from) return 0;
  return marks.subarray(from, to).reduce((sum, one) => sum + one, 0) / (to - from);
}
