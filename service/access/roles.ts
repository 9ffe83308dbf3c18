/** From most to least: the owner changes everything, a helper logs deeds, a viewer looks. */
export const ROLES = ["owner", "helper", "viewer"] as const;
export type Role = (typeof ROLES)[number];

/** Whether what needs one role is open to another. */
export function roleSuffices(role: Role, needed: Role): boolean {
  return ROLES.indexOf(role) <= ROLES.indexOf(needed);
}
