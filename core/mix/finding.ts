import type { ValueStatus } from "../plant/group.ts";
import type { SourceKey } from "../sources.ts";
import type { Hold } from "./mix-in-vessel.ts";
import type { WorkedMix } from "./worked-mix.ts";

export type FindingCode =
  | "too-little-draining"
  | "too-much-draining"
  | "too-open-for-leafy"
  | "holds-little-for-leafy"
  | "too-much-compost"
  | "too-much-fine"
  | "fine-sand-clogs"
  | "too-much-garden-soil"
  | "too-little-air"
  | "wet-base-deep"
  | "rich-for-compact"
  | "locks-nitrogen"
  | "sheds-water-when-dry";

/** More, less or none of a component; `toParts` 0 leaves it out, `fromParts` 0 brings it in. */
export interface PartChange {
  readonly component: string;
  readonly fromParts: number;
  readonly toParts: number;
}

/** One thing that growers would change in a mix, in code and numbers; the catalogue makes the sentence. */
export interface Finding {
  readonly code: FindingCode;
  readonly numbers: Readonly<Record<string, number>>;
  readonly status: ValueStatus;
  readonly source: SourceKey | null;
  /** The smallest change of one component that removes the finding; null when no such change does. */
  readonly cure: PartChange | null;
}

/** What the mix is for. */
export interface Purpose {
  /** Watered in at once and never left fully dry; otherwise drought-adapted. */
  readonly leafy: boolean;
  /** A short, dense shape is wanted, as for trained trees. */
  readonly compact?: boolean;
}

/** A mix as the rules look at it. */
export interface Judged {
  readonly worked: WorkedMix;
  /** In the grower's vessel, where one is given. */
  readonly hold: Hold | null;
  readonly depthCm: number | null;
  readonly purpose: Purpose;
}

/** One rule of the trade or of a source. */
export interface FitnessRule {
  readonly code: FindingCode;
  readonly status: ValueStatus;
  readonly source: SourceKey | null;
  /** The numbers of the finding where the rule is broken, else null. */
  readonly broken: (mix: Judged) => Readonly<Record<string, number>> | null;
  /** Whether a changed mix is well clear of the rule. */
  readonly cured: (mix: Judged) => boolean;
  /** What to try, in order of preference. */
  readonly moves: (mix: Judged) => readonly Move[];
}

/** A direction in which parts may be changed. */
export interface Move {
  readonly way: "more" | "less";
  readonly component: string;
}
