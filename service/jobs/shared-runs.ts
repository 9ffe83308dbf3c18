/**
 * The work, at most once at a time for each key. Whoever asks while a run is under way shares the next one with all
 * others who wait: that run begins after all of them asked, so it sees what each of them wrote.
 */
export function sharedRuns<T>(work: (key: string) => Promise<T>): (key: string) => Promise<T> {
  const underWay = new Map<string, Promise<T>>();
  const next = new Map<string, Promise<T>>();
  const start = (key: string): Promise<T> => {
    next.delete(key);
    const run = work(key).finally(() => underWay.delete(key));
    underWay.set(key, run);
    return run;
  };
  return (key) => {
    const current = underWay.get(key);
    if (!current) return start(key);
    const shared =
      next.get(key) ??
      current.then(
        () => start(key),
        () => start(key),
      );
    next.set(key, shared);
    return shared;
  };
}
