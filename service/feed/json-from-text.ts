/** A bare not-a-number where JSON wants a value; the feed prints one for points outside its grids. */
const BARE_NAN = /([:[,]\s*)[-+]?(?:nan|inf(?:inity)?)(?=\s*[,\]}])/gi;

export type JsonFromText =
  | { readonly kind: "json"; readonly value: unknown; readonly repaired: boolean }
  | { readonly kind: "html" | "text" | "cut" };

/** JSON in a body that may not be JSON: bare nan becomes null, anything else is named for what it is. */
export function jsonFromText(text: string): JsonFromText {
  const plain = parsed(text);
  if (plain !== undefined) return { kind: "json", value: plain, repaired: false };
  const mended = parsed(text.replace(BARE_NAN, "$1null"));
  if (mended !== undefined) return { kind: "json", value: mended, repaired: true };
  const start = text.trimStart();
  if (start.startsWith("<")) return { kind: "html" };
  return { kind: start.startsWith("{") || start.startsWith("[") ? "cut" : "text" };
}

/** Undefined when it does not parse; JSON itself has no undefined. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
