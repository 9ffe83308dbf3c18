/**
 * Compile-time proof that a schema's output is the core's own type. Assignable both ways is not enough: an optional
 * key that the schema forgot would pass, so the two are compared once more with every key required.
 */
export type SameType<Parsed, Core> =
  Assignable<Parsed, Core> extends true ? Assignable<Filled<Parsed>, Filled<Core>> : false;

/** Fails to compile unless given `true`. */
export type Proof<T extends true> = T;

type Assignable<A, B> = [Loose<A>] extends [Loose<B>]
  ? [Loose<B>] extends [Loose<A>]
    ? true
    : false
  : false;

type Leaf = string | number | boolean | null | undefined | Float64Array;

type Loose<T> = T extends Leaf ? T : { -readonly [K in keyof T]: Loose<T[K]> };

type Filled<T> = T extends Leaf ? T : { -readonly [K in keyof T]-?: Filled<T[K]> };
