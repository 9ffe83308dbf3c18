/** Something in a raw case and where it stands. */
export interface Found {
  readonly value: unknown;
  readonly path: readonly (string | number)[];
}

/** @returns the elements of the list at the path; none when there is no list */
export function found(raw: unknown, path: readonly string[]): Found[] {
  const list = valueAt(raw, path);
  return Array.isArray(list) ? list.map((value, index) => ({ value, path: [...path, index] })) : [];
}

/** @returns what stands at the path, undefined when the way to it is broken */
export function valueAt(raw: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>(
    (inner, key) => (inner !== null && typeof inner === "object" ? Reflect.get(inner, key) : undefined),
    raw,
  );
}

export function textAt(raw: unknown, path: readonly string[]): string | undefined {
  const value = valueAt(raw, path);
  return typeof value === "string" ? value : undefined;
}

export function numberAt(raw: unknown, path: readonly string[]): number | undefined {
  const value = valueAt(raw, path);
  return typeof value === "number" ? value : undefined;
}
