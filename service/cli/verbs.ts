import type { Verb } from "./verb.ts";

export interface VerbEntry {
  readonly name: string;
  /** One line in the list of verbs. */
  readonly summary: string;
  /** A verb's own modules are read only when it is asked for: reckoning a line needs no web server. */
  load(): Promise<Verb>;
}

/** In the order of the help. */
export const VERBS: readonly VerbEntry[] = [
  {
    name: "brief",
    summary: "print today's brief from the plan that the service keeps",
    load: async () => (await import("./brief.ts")).brief,
  },
  {
    name: "plan",
    summary: "read one case from standard input and print its plan",
    load: async () => (await import("./plan.ts")).plan,
  },
  {
    name: "why",
    summary: "print the numbers that one pot's deeds came from",
    load: async () => (await import("./why.ts")).why,
  },
  {
    name: "schema",
    summary: "print the JSON Schema of a case, a plan or an export",
    load: async () => (await import("./schema.ts")).schema,
  },
  {
    name: "calc",
    summary: "reckon one quantity for each line of standard input, and show the work",
    load: async () => (await import("./calc.ts")).calc,
  },
  {
    name: "replay",
    summary: "play whole years: the planner, people and perfect foresight",
    load: async () => (await import("./replay.ts")).replay,
  },
  {
    name: "demo",
    summary: "show it all on an invented roof terrace with invented weather",
    load: async () => (await import("./demo.ts")).demo,
  },
  {
    name: "serve",
    summary: "run the service: pages, morning plan, messages",
    load: async () => (await import("./serve.ts")).serve,
  },
  {
    name: "backup",
    summary: "copy all that is kept, checked, while the service runs",
    load: async () => (await import("./backup.ts")).backup,
  },
  {
    name: "restore",
    summary: "put a backup in the place of what is kept",
    load: async () => (await import("./restore.ts")).restore,
  },
  {
    name: "export",
    summary: "print all that is kept as one JSON object, or the pots as CSV",
    load: async () => (await import("./export.ts")).exportVerb,
  },
  {
    name: "import",
    summary: "take in what export printed",
    load: async () => (await import("./import.ts")).importVerb,
  },
  {
    name: "forget",
    summary: "let go of a person, and of their name in the journal",
    load: async () => (await import("./forget.ts")).forget,
  },
];
