import type { Catalogue } from "./languages.ts";

export const ES = {} as const satisfies Catalogue;
