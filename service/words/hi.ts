import type { Catalogue } from "./languages.ts";

export const HI = {} as const satisfies Catalogue;
