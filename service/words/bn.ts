import type { Catalogue } from "./languages.ts";

export const BN = {} as const satisfies Catalogue;
