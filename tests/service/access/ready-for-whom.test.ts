import { describe, expect, it } from "vitest";
import { fill } from "../store/bench.ts";
import { guardedHouse } from "./guarded-house.ts";

describe("a page that is kept ready", () => {
  it("is each role's own: the owner's is neither shown to a viewer nor called unchanged to one", async () => {
    const house = await guardedHouse();
    await fill(house.store);
    const [owner, viewer] = [await house.signedIn("owner"), await house.signedIn("viewer")];
    const get = (headers: Record<string, string>) => house.app.request("/pots", { headers });
    for (const round of [1, 2]) {
      const owners = await get(owner);
      const etag = owners.headers.get("etag") ?? "";
      const viewers = await get({ ...viewer, "if-none-match": etag });
      expect([round, viewers.status]).toEqual([round, 200]);
      expect(await owners.text()).not.toContain("data-role");
      expect(await viewers.text()).toContain('<html data-role="viewer"');
      expect((await get({ ...owner, "if-none-match": etag })).status).toBe(304);
    }
  });

  it("is shown to nobody who has signed in no more", async () => {
    const house = await guardedHouse();
    await fill(house.store);
    const owner = await house.signedIn("owner");
    expect((await house.app.request("/pots", { headers: owner })).status).toBe(200);
    expect((await house.app.request("/pots", { headers: { accept: "text/html" } })).status).toBe(303);
  });
});
