const NAMES_OFFERED = 3;

/** What growers also call the components. */
const TRADE_NAMES: Readonly<Record<string, string>> = {
  akadama: "calcined-clay",
  bark: "pine-bark-fine",
  biochar: "charcoal",
  chips: "coco-chips",
  coir: "coco-peat",
  compost: "leaf-mould",
  gravel: "grit",
  leca: "expanded-clay",
  manure: "composted-manure",
  moss: "peat",
  pozzolan: "lava",
  sand: "coarse-sand",
  scoria: "lava",
  soil: "garden-loam",
  sphagnum: "peat",
  worm: "vermicompost",
};

/** The names most like a mistyped one, best first: the same thing by its other name, then by letters. */
export function nearestNames(given: string, names: Iterable<string>): string[] {
  const wanted = given
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, "-");
  return [...names]
    .map((name) => ({ name, steps: unlikeness(wanted, name) }))
    .sort((a, b) => a.steps - b.steps || (a.name < b.name ? -1 : 1))
    .slice(0, NAMES_OFFERED)
    .map(({ name }) => name);
}

/** 0 for the name but for its spelling, then another name of the same thing, a whole word that agrees, steps of editing. */
function unlikeness(wanted: string, name: string): number {
  if (wanted === name) return 0;
  const words = wanted.split("-");
  if (words.some((word) => TRADE_NAMES[word] === name)) return 0.5;
  const nameWords = name.split("-");
  if (words.some((word) => word.length > 2 && nameWords.includes(word))) return 1;
  return editSteps(wanted, name);
}

/** Least number of letters to change, add or drop. [LEVENSHTEIN1966] */
function editSteps(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const change = row[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(change, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[to.length]!;
}
