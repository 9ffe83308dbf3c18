/** 0 done; 1 bad input, every problem told; 2 the feed or the store failed. */
export type ExitCode = 0 | 1 | 2;

export const DONE = 0 satisfies ExitCode;
export const BAD_INPUT = 1 satisfies ExitCode;
export const FAILED = 2 satisfies ExitCode;

export interface Option {
  readonly type: "boolean" | "string";
  readonly about: string;
  /** What stands for the value in the help, e.g. "port". */
  readonly value?: string;
}

export interface Positional {
  readonly name: string;
  readonly about: string;
  /** The only words allowed here and what each does. */
  readonly choices?: Readonly<Record<string, string>>;
}

/** What was written after the verb, checked against its options. */
export interface Arguments {
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
  readonly words: readonly string[];
}

/** One thing that `leebench` can do. */
export interface Verb {
  /** Paragraphs of its own help, between the usage line and the options. */
  readonly about: readonly string[];
  readonly positionals: readonly Positional[];
  readonly options: Readonly<Record<string, Option>>;
  run(args: Arguments): Promise<ExitCode>;
}
