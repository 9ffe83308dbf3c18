/** A ticked watering as the page of the day sends it. */
export function tickForm(tick: { entryId: string; potId: string }): URLSearchParams {
  const deed = new URLSearchParams({ ...tick, action: "water", waterMl: "50" });
  return new URLSearchParams({ deed: deed.toString() });
}
