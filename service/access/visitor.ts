import type { Role } from "./roles.ts";

/** Who asks. In an open house everybody on this machine is the owner. */
export type Visitor =
  | { readonly kind: "open"; readonly role: Role }
  | {
      readonly kind: "session";
      readonly role: Role;
      readonly accountId: string;
      readonly name: string;
      readonly digest: string;
    }
  | { readonly kind: "token"; readonly role: Role; readonly tokenId: string; readonly name: string };

declare module "hono" {
  interface ContextVariableMap {
    /** Set by the gate on every route that asks for a role. */
    visitor: Visitor;
  }
}
