import { type Found, found, textAt, valueAt } from "./raw-case.ts";

/** The raw journal's entries and, beside each correction, what it puts in place: pot and body again. */
export function entriesAsMeant(raw: unknown): Found[] {
  return found(raw, ["journal"]).flatMap(withCorrectedBodies);
}

function withCorrectedBodies(entry: Found): Found[] {
  if (textAt(entry.value, ["body", "kind"]) !== "correction") return [entry];
  const body = { value: valueAt(entry.value, ["body"]), path: [...entry.path, "body"] };
  return [entry, ...withCorrectedBodies(body)];
}
