import { IntlMessageFormat } from "intl-messageformat";

type Elements = ReturnType<IntlMessageFormat["getAst"]>;

export interface PluralRead {
  readonly name: string;
  /** "=0", "one", "other" ... with whether the branch tells the number. */
  readonly branches: ReadonlyMap<string, { readonly tellsNumber: boolean }>;
}

export interface MessageRead {
  readonly names: readonly string[];
  readonly plurals: readonly PluralRead[];
  /** The words alone, without arguments. */
  readonly plainText: string;
}

// Kinds of parts as the parser of the library numbers them.
const LITERAL = 0;
const PLURAL = 6;
const POUND = 7;

/** What a message names, counts and says, read by the library that also says it. */
export function readMessage(text: string, language: string): MessageRead {
  const names = new Set<string>();
  const plurals: PluralRead[] = [];
  const literals: string[] = [];
  const walk = (elements: Elements): void => {
    for (const element of elements) {
      if (element.type === LITERAL) literals.push(element.value);
      else if (element.type !== POUND && "value" in element) names.add(element.value);
      if (element.type !== PLURAL) continue;
      const branches = Object.entries(element.options).map(([category, { value }]) => {
        walk(value);
        return [category, { tellsNumber: value.some(({ type }) => type === POUND) }] as const;
      });
      plurals.push({ name: element.value, branches: new Map(branches) });
    }
  };
  walk(new IntlMessageFormat(text, language, undefined, { ignoreTag: true }).getAst());
  return { names: [...names].sort(), plurals, plainText: literals.join(" ") };
}
