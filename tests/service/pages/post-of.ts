/** A form as a browser sends it. */
export function postOf(
  fields: Record<string, string> | [string, string][],
  headers: Record<string, string> = {},
): RequestInit {
  return {
    method: "POST",
    body: new URLSearchParams(fields),
    headers: { "Content-Type": "application/x-www-form-urlencoded", ...headers },
  };
}
