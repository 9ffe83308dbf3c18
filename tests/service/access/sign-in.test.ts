import { describe, expect, it } from "vitest";
import { cookieOf, guardedHouse } from "./guarded-house.ts";

const PASSPHRASE = "the fig on the stairs";
const PAGE = { accept: "text/html" };
const REACHED = { LEEBENCH_HOST: "0.0.0.0" };

async function claimed() {
  const house = await guardedHouse(REACHED);
  await house.door.tellCode();
  const code = /[A-Z2-9]{4}-[A-Z2-9]{4}-[A-Z2-9]{4}/.exec(house.told.join())?.[0] ?? "";
  const answer = await house.post("/claim", { code, passphrase: PASSPHRASE, again: PASSPHRASE });
  return { ...house, code, answer };
}

describe("a house within reach of others that nobody owns yet", () => {
  it("answers nothing but the page for choosing the passphrase", async () => {
    const { app } = await guardedHouse(REACHED);
    const visit = await app.request("/pots", { headers: PAGE });
    expect([visit.status, visit.headers.get("location")]).toEqual([303, "/claim"]);
    expect((await app.request("/pots")).status).toBe(401);
    const claim = await app.request("/claim");
    expect(claim.status).toBe(200);
    expect(await claim.text()).not.toContain("Yard");
    expect((await app.request("/healthz")).status).toBe(200);
  });

  it("takes the owner's passphrase with the code of the console alone, and once", async () => {
    const { app, post, answer, code, told } = await claimed();
    expect(told).toHaveLength(1);
    expect([answer.status, answer.headers.get("location")]).toEqual([303, "/"]);
    const cookie = cookieOf(answer);
    expect((await app.request("/pots", { headers: { cookie } })).status).toBe(200);
    expect((await app.request("/pots", { headers: PAGE })).headers.get("location")).toBe(
      "/sign-in?back=%2Fpots",
    );
    const again = await post("/claim", {
      code,
      passphrase: "another one altogether",
      again: "another one altogether",
    });
    expect(again.status).toBe(401);
  });

  it("refuses other codes, short passphrases and two that differ, and then makes guessers wait", async () => {
    const { post, store } = await guardedHouse(REACHED);
    const long = { passphrase: PASSPHRASE, again: PASSPHRASE };
    expect(
      (await post("/claim", { code: "AAAA-BBBB-CCCC", passphrase: "short", again: "short" })).status,
    ).toBe(422);
    expect((await post("/claim", { code: "AAAA-BBBB-CCCC", ...long, again: "x" })).status).toBe(422);
    for (let tries = 0; tries < 10; tries++)
      expect((await post("/claim", { code: `AAAA-BBBB-CC${tries}C`, ...long })).status).toBe(401);
    const waits = await post("/claim", { code: "AAAA-BBBB-CCCC", ...long });
    expect([waits.status, Number(waits.headers.get("retry-after"))]).toEqual([429, 60]);
    expect(await store.accounts.list()).toEqual([]);
  });
});

describe("an open house on this machine", () => {
  it("asks nobody, and prints the code only when somebody wants a passphrase", async () => {
    const { app, told, post } = await guardedHouse();
    expect((await app.request("/pots")).status).toBe(200);
    expect(told).toEqual([]);
    expect(await (await app.request("/house/access")).text()).toContain("asks nobody");
    await app.request("/claim");
    await app.request("/claim");
    expect(told).toHaveLength(1);
    const code = /[A-Z2-9-]{14}/.exec(told.join())?.[0] ?? "";
    await post("/claim", {
      code: code.toLowerCase().replaceAll("-", " "),
      passphrase: PASSPHRASE,
      again: PASSPHRASE,
    });
    expect((await app.request("/pots")).status).toBe(401);
  });
});

describe("signing in", () => {
  it("needs the right passphrase; the owner's name may be left out", async () => {
    const { app, post } = await claimed();
    const wrong = await post("/sign-in", { name: "", passphrase: `${PASSPHRASE} ` });
    expect([wrong.status, wrong.headers.get("set-cookie")]).toEqual([401, null]);
    expect((await post("/sign-in", { name: "nobody", passphrase: PASSPHRASE })).status).toBe(401);
    const right = await post("/sign-in", { name: "", passphrase: PASSPHRASE, back: "/sky?day=1" });
    expect([right.status, right.headers.get("location")]).toEqual([303, "/sky?day=1"]);
    expect(right.headers.get("set-cookie")).toMatch(
      /^leebench=[\w-]{43}; Max-Age=\d+; Path=\/; HttpOnly; SameSite=Lax$/,
    );
    expect((await app.request("/pots", { headers: { cookie: cookieOf(right) } })).status).toBe(200);
  });

  // RFC 6265bis, 4.1.3.2: a name that begins with __Host- goes with Secure, Path=/ and no Domain.
  it("over TLS uses a cookie that no other host can plant, and believes no other", async () => {
    const { app, post } = await guardedHouse({
      LEEBENCH_PUBLIC_HOST: "bench.example",
      LEEBENCH_PASSPHRASE: PASSPHRASE,
    });
    const tls = { "x-forwarded-proto": "https", "x-forwarded-for": "192.0.2.7", host: "bench.example" };
    const answer = await post("/sign-in", { passphrase: PASSPHRASE }, tls);
    expect(answer.headers.get("set-cookie")).toMatch(
      /^__Host-leebench=[\w-]{43}; Max-Age=\d+; Path=\/; HttpOnly; Secure; SameSite=Lax$/,
    );
    const cookie = cookieOf(answer);
    expect((await app.request("/pots", { headers: { ...tls, cookie } })).status).toBe(200);
    const plain = cookie.replace("__Host-", "");
    expect((await app.request("/pots", { headers: { ...tls, cookie: plain } })).status).toBe(401);
  });

  it("leads back only within the house", async () => {
    const { post } = await claimed();
    for (const back of [
      "//evil.example",
      "/\\evil.example",
      "https://evil.example",
      "/\tx",
      "javascript:1",
    ]) {
      const answer = await post("/sign-in", { passphrase: PASSPHRASE, back });
      expect(answer.headers.get("location"), back).toBe("/");
    }
  });
});

describe("a session", () => {
  it("ends by sign-out, by sign-out everywhere, and when the passphrase changes", async () => {
    const { app, signedIn, post, store } = await guardedHouse(REACHED);
    const isIn = async (headers: Record<string, string>) =>
      (await app.request("/pots", { headers })).status === 200;
    const [one, two] = [await signedIn("owner"), await signedIn("owner")];
    await post("/sign-out", {}, one);
    expect([await isIn(one), await isIn(two)]).toEqual([false, true]);
    const three = await signedIn("owner");
    await post("/house/access/sign-out-everywhere", {}, two);
    expect([await isIn(two), await isIn(three)]).toEqual([false, false]);
    const four = await signedIn("owner");
    const owner = await store.accounts.get("owner");
    await store.accounts.put({ ...owner!, passphrase: "scrypt$15$8$3$c2FsdA$BBBB" });
    expect(await isIn(four)).toBe(false);
  });

  it("ends when it was not used for a month, and after half a year in any case", async () => {
    const DAY_MS = 86_400_000;
    const { app, clock, signedIn } = await guardedHouse(REACHED);
    const status = async (headers: Record<string, string>) =>
      (await app.request("/pots", { headers })).status;
    const daily = await signedIn("viewer");
    const idle = await signedIn("viewer");
    for (let day = 0; day < 29; day++) clock.nowUtcMs += DAY_MS;
    expect([await status(daily), await status(idle)]).toEqual([200, 200]);
    for (let day = 0; day < 150; day += 10) {
      clock.nowUtcMs += 10 * DAY_MS;
      expect(await status(daily), `day ${day}`).toBe(200);
    }
    expect(await status(idle)).toBe(401);
    clock.nowUtcMs += 2 * DAY_MS;
    expect(await status(daily)).toBe(401);
  });

  it("begun by a sign-in is not the one that the browser brought", async () => {
    const { app, post } = await claimed();
    const planted = "leebench=aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa";
    const answer = await post("/sign-in", { passphrase: PASSPHRASE }, { cookie: planted });
    expect(cookieOf(answer)).not.toBe(planted);
    expect((await app.request("/pots", { headers: { cookie: planted } })).status).toBe(401);
    const again = await post("/sign-in", { passphrase: PASSPHRASE }, { cookie: cookieOf(answer) });
    expect((await app.request("/pots", { headers: { cookie: cookieOf(answer) } })).status).toBe(401);
    expect((await app.request("/pots", { headers: { cookie: cookieOf(again) } })).status).toBe(200);
  });

  it("changes nothing for a request that does not say where it comes from", async () => {
    const { app, signedIn } = await guardedHouse(REACHED);
    const { cookie } = await signedIn("owner");
    const send = (headers: Record<string, string>) =>
      app.request("/house/access/tokens", {
        method: "POST",
        headers: { cookie, ...headers },
        body: new URLSearchParams(),
      });
    expect((await send({})).status).toBe(403);
    expect((await send({ "sec-fetch-site": "cross-site" })).status).toBe(403);
    expect((await send({ "sec-fetch-site": "same-origin" })).status).toBe(422);
  });
});

describe("people and tokens", () => {
  it("a person is let in by a code of the owner's and chooses a passphrase of their own", async () => {
    const { app, post, signedIn, clock } = await guardedHouse(REACHED);
    const owner = await signedIn("owner");
    const added = await (await post("/house/access/people", { name: "Tov", mayDo: "helper" }, owner)).text();
    const code = /<strong>([A-Z2-9-]{14})</.exec(added)?.[1] ?? "";
    const chosen = { passphrase: PASSPHRASE, again: PASSPHRASE };
    const claim = await post("/claim", { code, ...chosen });
    const helper = { cookie: cookieOf(claim) };
    expect((await app.request("/pots", { headers: helper })).status).toBe(200);
    expect((await app.request("/pots/new", { headers: helper })).status).toBe(403);
    expect((await post("/claim", { code, ...chosen })).status).toBe(401);
    const late = await (await post("/house/access/people", { name: "Una", mayDo: "viewer" }, owner)).text();
    clock.nowUtcMs += 4 * 86_400_000;
    expect(
      (await post("/claim", { code: /[A-Z2-9]{4}(-[A-Z2-9]{4}){2}/.exec(late)?.[0] ?? "", ...chosen }))
        .status,
    ).toBe(401);
    expect((await post("/house/access/people", { name: "tov", mayDo: "viewer" }, owner)).status).toBe(422);
  });

  it("a token is shown once, kept as a digest, does what its role can, and ends", async () => {
    const { app, post, signedIn, store, clock } = await guardedHouse(REACHED);
    const owner = await signedIn("owner");
    const made = await (
      await post("/house/access/tokens", { name: "scales", mayDo: "viewer", days: "2" }, owner)
    ).text();
    const token = /class="secret">([\w-]{43})</.exec(made)?.[1] ?? "";
    expect(JSON.stringify(store.raw.prepare("SELECT * FROM api_token").all())).not.toContain(token);
    expect(await (await app.request("/house/access", { headers: owner })).text()).not.toContain(token);
    const headers = { authorization: `Bearer ${token}` };
    expect((await app.request("/metrics", { headers })).status).toBe(200);
    expect((await app.request("/pots/log", { method: "POST", headers })).status).toBe(403);
    clock.nowUtcMs += 3 * 86_400_000;
    expect((await app.request("/metrics", { headers })).status).toBe(401);
    for (const authorization of ["Bearer x", "Basic eDp5", "Bearer", `bearer ${token.slice(1)}`, ""])
      expect((await app.request("/metrics", { headers: { authorization } })).status, authorization).toBe(401);
  });
});
