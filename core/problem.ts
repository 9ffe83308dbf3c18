/** One fault in something entered: a stable code, where it stands, and the values that a sentence about it needs. */
export interface Problem {
  readonly code: string;
  /** Keys and indices from the top of the thing checked, e.g. ["collection", "pots", 3, "mixId"]. */
  readonly path: readonly (string | number)[];
  readonly data?: Readonly<Record<string, unknown>>;
}

/** An expected outcome: the value, or every problem that stood in its way. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };
