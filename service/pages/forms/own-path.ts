/** Where a form asks to be led: a page of this house, and nowhere else. */
export function ownPath(asked: string, otherwise: string): string {
  return /^\/(?:$|[a-z])/.test(asked) ? asked : otherwise;
}
