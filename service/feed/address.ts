/** Base address, path and parameters as one; null when the base is not an http address. A path in the base stays. */
export function withPath(
  base: string,
  path: string,
  parameters: Readonly<Record<string, string>>,
): URL | null {
  if (!URL.canParse(base)) return null;
  const url = new URL(base);
  if (!/^https?:$/.test(url.protocol)) return null;
  url.pathname = url.pathname.replace(/\/+$/, "") + path;
  url.search = new URLSearchParams(parameters).toString().replaceAll("%2C", ",");
  return url;
}
