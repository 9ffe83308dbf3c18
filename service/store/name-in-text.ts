/** Stands where the name was. */
const SOMEBODY = "somebody";

/** The value with a person's name taken out of every free text in it, wherever it stands as words of their own. */
export function withoutName(value: unknown, name: string): unknown {
  const words = new RegExp(`(?<![\\p{L}\\p{N}])${escaped(name)}(?![\\p{L}\\p{N}])`, "giu");
  const through = (at: unknown, key: string): unknown => {
    if (typeof at === "string") return key === "text" ? at.replace(words, SOMEBODY) : at;
    if (at === null || typeof at !== "object") return at;
    if (Array.isArray(at)) return at.map((one) => through(one, key));
    return Object.fromEntries(Object.entries(at).map(([inner, one]) => [inner, through(one, inner)]));
  };
  return through(value, "");
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/-]/g, "\\$&");
}
