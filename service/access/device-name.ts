const BROWSERS = ["Firefox", "Edg", "OPR", "Chrome", "Safari"];
const SYSTEMS = ["Android", "iPhone", "iPad", "Windows", "Mac OS X", "CrOS", "Linux"];
const MOST_CHARS = 40;

/** What to call a device by what its browser says of itself; its own words, shortened, where none of them is known. */
export function deviceName(userAgent: string): string {
  const known = [BROWSERS, SYSTEMS].flatMap((names) => names.find((name) => userAgent.includes(name)) ?? []);
  return known.length > 0 ? known.join(", ") : userAgent.slice(0, MOST_CHARS) || "?";
}
