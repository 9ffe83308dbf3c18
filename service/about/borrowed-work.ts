/** One package that runs in the service, directly or behind another. */
export interface Borrowed {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}

interface LockEntry {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
}

/** Builds of one package for each platform, told once as the package that needs them; and types, which never run. */
const LEFT_OUT = /^(@types\/|@esbuild\/|@img\/sharp-(?!libvips)|node-linux-)/;

/**
 * Every package that the service needs to run, by name, from the text of package-lock.json. Packages that only check,
 * build or test are left out; the builds of one library for several platforms are one.
 */
export function borrowedFromLock(lockText: string): Borrowed[] {
  const { packages } = JSON.parse(lockText) as { packages: Readonly<Record<string, LockEntry>> };
  const borrowed = new Map<string, Borrowed>();
  for (const [path, { version = "", license = "", dev, devOptional }] of Object.entries(packages)) {
    const name = path.split("node_modules/").at(-1) ?? "";
    if (path === "" || dev || devOptional || LEFT_OUT.test(name)) continue;
    borrowed.set(`${name} ${version}`, { name, version, licence: license });
  }
  const all = [...borrowed.values()].map(asOnePackage);
  return [...new Map(all.map((one) => [`${one.name} ${one.version}`, one])).values()].sort((a, b) =>
    a.name < b.name ? -1 : a.name > b.name ? 1 : 0,
  );
}

/** libvips comes in a build for each platform under one licence. */
function asOnePackage(one: Borrowed): Borrowed {
  return one.name.startsWith("@img/sharp-libvips") ? { ...one, name: "@img/sharp-libvips" } : one;
}
