import type { IntlMessageFormat } from "intl-messageformat";

type Elements = ReturnType<IntlMessageFormat["getAst"]>;

/** The kinds of the parts of a message, as the parser numbers them. */
const ARGUMENT = 1;
const SELECT = 5;
const PLURAL = 6;

/** Arguments of a message that are counted in words, in its branches too. */
export function countedNames(elements: Elements): Set<string> {
  const names = new Set<string>();
  for (const element of elements) {
    if (element.type === PLURAL) names.add(element.value);
    if (element.type === PLURAL || element.type === SELECT)
      for (const { value } of Object.values(element.options))
        for (const name of countedNames(value)) names.add(name);
  }
  return names;
}

/** Whether a day stands at the head of the message. */
export function startsWithDay([first]: Elements): boolean {
  return first?.type === ARGUMENT && first.value.endsWith("Day");
}
