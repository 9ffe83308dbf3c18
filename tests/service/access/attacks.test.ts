import { randomBytes } from "node:crypto";
import { once } from "node:events";
import { connect, type Socket } from "node:net";
import sharp from "sharp";
import { describe, expect, it, onTestFinished } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { listen } from "../../../service/listen.ts";
import { mailChannel, mailLine, mailName } from "../../../service/notify/mail-channel.ts";
import { signedLink } from "../../../service/notify/signed-link.ts";
import { postOut } from "../../../service/outgoing/post-out.ts";
import { flatPng, SMALL_PICTURE, zipped } from "../../drills/bombs.ts";
import { serveHttp } from "../feed/loopback-server.ts";
import { postOffice } from "../notify/post-office.ts";
import { postOf } from "../pages/post-of.ts";
import { barePlan } from "../store/bare-plan.ts";
import { pot } from "../store/bench.ts";
import { cookieOf, guardedHouse, SAME_ORIGIN } from "./guarded-house.ts";

/* The attacks of DEVELOPERS.md, "Attacks tried", under the same numbers. */

const SCRIPT = `"><script>alert(1)</script><img src=x onerror=alert(1)>`;
const REACHED = { LEEBENCH_HOST: "0.0.0.0" };

type Asked = Awaited<ReturnType<typeof guardedHouse>>["app"];

/** Mark-up that would run in a browser. */
function running(page: string): string[] {
  return page.match(/<script(?! src="\/app\.js")[^>]*>|<[a-z]+[^>"]*\son\w+=|javascript:/gi) ?? [];
}

describe("1. a script stored in a name", () => {
  it("of a pot or a site is shown as the text that it is, on every page", async () => {
    const { app, store } = await guardedHouse();
    await store.pots.put("yard", pot({ name: SCRIPT }));
    const site = (await store.sites.get("yard"))!;
    await store.sites.put({ ...site, name: SCRIPT });
    await store.journal.append("yard", [
      { id: "n1", potId: "p1", atUtcMs: 1, recordedUtcMs: 1, body: { kind: "note", text: SCRIPT } },
    ]);
    for (const path of [
      "/",
      "/pots",
      "/pots/p1",
      "/journal",
      "/sky",
      "/house",
      "/house/status",
      "/holiday",
      `/journal?search=${encodeURIComponent(SCRIPT)}`,
      "/house/access",
    ]) {
      const answer = await app.request(path);
      const page = await answer.text();
      expect(running(page), path).toEqual([]);
      expect(answer.headers.get("content-security-policy"), path).toMatch(
        /script-src 'self';.*require-trusted-types-for 'script'/,
      );
    }
    const json = await app.request("/api/v1/sites/yard/pots", { headers: { accept: "text/html" } });
    expect(json.headers.get("content-type")).toBe("application/json");
  });

  it("that the feed sends as the name of a place is text as well", async () => {
    const feed = await serveHttp((_, response) =>
      response.end(
        JSON.stringify({
          results: [{ id: 1, name: SCRIPT, admin1: SCRIPT, latitude: 1, longitude: 2, timezone: "UTC" }],
        }),
      ),
    );
    onTestFinished(() => feed.close());
    const { app, store } = await guardedHouse(
      {},
      { feed: { ...DEFAULT_FEED_SETTINGS, geocodingUrl: feed.url } },
    );
    for (const table of ["journal_no_delete", "journal_no_update"]) store.raw.exec(`DROP TRIGGER ${table}`);
    store.raw.exec(
      "DELETE FROM journal; DELETE FROM pot; DELETE FROM mix; DELETE FROM spot; DELETE FROM site",
    );
    const page = await (await app.request("/begin/site", postOf({ do: "search", place: "anywhere" }))).text();
    expect(page).toContain("alert(1)");
    expect(running(page)).toEqual([]);
  });
});

it("2. a forged origin: no other site's page changes anything, as a form or as JSON", async () => {
  const { app, signedIn, store } = await guardedHouse(REACHED);
  const { cookie } = await signedIn("owner");
  const before = await store.journal.list("yard");
  const elsewhere: Record<string, string>[] = [
    { "sec-fetch-site": "cross-site", origin: "http://localhost" },
    { "sec-fetch-site": "same-site" },
    { origin: "https://evil.example" },
    { origin: "null" },
    { origin: "http://localhost:9999" },
    { origin: "http://localhost.evil.example" },
    { referer: "http://localhost/" },
    {},
  ];
  for (const headers of elsewhere)
    for (const [path, type, body] of [
      ["/journal/late", "application/x-www-form-urlencoded", "text=x&address=/pots/p1/log"],
      ["/api/v1/sites/yard/journal", "application/json", '{"body":{"kind":"note","text":"x"}}'],
      ["/api/v1/sites/yard/journal", "text/plain", '{"body":{"kind":"note","text":"x"}}'],
    ] as const) {
      const sent = { ...headers, cookie, host: "localhost", "content-type": type };
      expect((await app.request(path, { method: "POST", body, headers: sent })).status).toBe(403);
    }
  expect(await store.journal.list("yard")).toEqual(before);
});

it("3. session fixation: a planted cookie is worth nothing, before and after somebody signs in with it", async () => {
  const { app, post } = await guardedHouse({ LEEBENCH_PASSPHRASE: "the fig on the stairs", ...REACHED });
  const planted = `leebench=${randomBytes(32).toString("base64url")}`;
  const signedIn = await post("/sign-in", { passphrase: "the fig on the stairs" }, { cookie: planted });
  expect(signedIn.status).toBe(303);
  expect(cookieOf(signedIn)).not.toBe(planted);
  expect((await app.request("/pots", { headers: { cookie: planted } })).status).toBe(401);
});

it("4. timing: an unknown name takes as long as a known one, a near miss as long as a far one", async () => {
  const { post, clock } = await guardedHouse({ LEEBENCH_PASSPHRASE: "the fig on the stairs", ...REACHED });
  const ways = [
    { name: "owner", passphrase: "the fig on the stairz" },
    { name: "owner", passphrase: "x" },
    { name: "nobody here", passphrase: "the fig on the stairs" },
  ];
  const tookMs = ways.map((): number[] => []);
  for (let round = 0; round < 3; round++) {
    clock.nowUtcMs += 61_000;
    for (const [index, way] of ways.entries()) {
      const startedMs = performance.now();
      expect((await post("/sign-in", way)).status).toBe(401);
      tookMs[index]!.push(performance.now() - startedMs);
    }
  }
  // Without a hash of equal cost the unknown name would be answered a hundred times sooner.
  const least = tookMs.map((times) => Math.min(...times));
  expect(Math.max(...least) / Math.min(...least)).toBeLessThan(3);
});

it("5. server-side requests: a target given by a person reaches nothing inside, directly or by a redirect", async () => {
  const asked: string[] = [];
  const inside = await serveHttp((request, response) => {
    asked.push(request.url ?? "");
    response.end();
  });
  const redirecting = await serveHttp((_, response) =>
    response.writeHead(307, { location: inside.url }).end(),
  );
  onTestFinished(() => inside.close());
  onTestFinished(() => redirecting.close());
  const { port } = inside;
  const hosts = [
    "127.0.0.1",
    "localhost",
    "2130706433",
    "0x7f000001",
    "0177.0.0.1",
    "127.1",
    "[::1]",
    "[::ffff:127.0.0.1]",
    "0.0.0.0",
    "[::]",
    "169.254.169.254",
    "10.0.0.1",
    "[fd00::1]",
    "rebound.example",
  ];
  const lookUp = async (host: string) => [
    { address: host === "rebound.example" ? "192.168.1.1" : "127.0.0.1" },
  ];
  for (const host of hosts) {
    const post = { url: new URL(`http://${host}:${port}/hook`), headers: {}, body: "x" };
    expect(await postOut(post, { allowedHosts: [], lookUp, timeoutMs: 500 }), host).toEqual({
      kind: "own-network",
    });
  }
  // One host of the own network is allowed; what it redirects to is not asked.
  const allowed = { url: new URL(redirecting.url), headers: {}, body: "x" };
  expect(await postOut(allowed, { allowedHosts: ["127.0.0.1"], timeoutMs: 2000 })).toEqual({
    kind: "answered",
    status: 307,
  });
  expect(asked).toEqual([]);
});

it("6. spreadsheet formulas: a pot's name in the table begins with an apostrophe and runs nowhere", async () => {
  const { app, store } = await guardedHouse();
  const names = ['=HYPERLINK("http://evil.example")', "+1+1", "-2", "@SUM(A1)", "\t=1", "'=1"];
  for (const [index, name] of names.entries()) await store.pots.put("yard", pot({ id: `f${index}`, name }));
  const table = await (await app.request("/house/copies/pots.csv")).text();
  const cells = table
    .split("\r\n")
    .flatMap((line) => [...line.matchAll(/(?:^|,)"?([^",]*)/g)].map(([, cell]) => cell ?? ""));
  expect(cells.filter((cell) => /^[=+\-@\t\r]/.test(cell))).toEqual([]);
  expect(table).toContain("'=HYPERLINK");
});

describe("7. guessed addresses", () => {
  it("of a calendar open nothing but to who has the whole secret, and all misses look the same", async () => {
    const { app, store, post, signedIn, clock } = await guardedHouse(REACHED);
    const owner = await signedIn("owner");
    await store.people.put({ id: "ann", name: "Ann", locale: "en", units: "metric", quiet: null });
    expect((await post("/people/ann/channels", { kind: "calendar" }, owner)).status).toBe(303);
    const deeds = [{ potId: "p1", action: "water" as const, amountMl: 500 }];
    const plan = barePlan({ nowUtcMs: clock.nowUtcMs, deeds });
    await store.plans.save(plan, { kind: "morning", madeUtcMs: clock.nowUtcMs });
    const [channel] = await store.channels.list();
    if (channel?.kind !== "calendar") throw new Error("no calendar");
    const { secret, id } = channel;
    // As made: 128 bits or more, of chance alone (NIST SP 800-63B asks 64 of a look-up secret; from memory).
    expect(Buffer.from(secret, "base64url").length * 8).toBeGreaterThanOrEqual(128);
    const at = async (file: string) => {
      const answer = await app.request(`/calendar/${file}`);
      return { status: answer.status, type: answer.headers.get("content-type"), text: await answer.text() };
    };
    const right = await at(`${secret}.ics`);
    expect([right.status, right.type]).toEqual([200, "text/calendar; charset=utf-8"]);
    expect(right.text).toContain("BEGIN:VEVENT");
    const turned = [...secret].reverse().join("");
    const missed = await at("nothing.ics");
    expect(missed.status).toBe(404);
    for (const guess of [
      "",
      "0",
      "ann",
      "yard",
      id,
      secret.slice(0, -1),
      secret.slice(1),
      `${secret}A`,
      turned,
      secret.toLowerCase(),
      `${secret}%00`,
      "..%2f..",
      "%",
      "__proto__",
      "a".repeat(5000),
      randomBytes(24).toString("base64url"),
    ])
      for (const file of [guess, `${guess}.ics`]) {
        if (file === "") continue;
        const { status, text } = await at(file);
        expect([status, text], file).toEqual([404, missed.text]);
      }
    // The address is a permission for this one thing, and not a day longer than its owner wants.
    expect((await app.request("/pots", { headers: { authorization: `Bearer ${secret}` } })).status).toBe(401);
    expect((await app.request("/pots", { headers: { cookie: `leebench=${secret}` } })).status).toBe(401);
    await post(`/people/ann/channels/${id}/renew`, {}, owner);
    expect((await at(`${secret}.ics`)).status).toBe(404);
  });

  it("of links to answer and to stop mail open nothing without the key of the house", async () => {
    const { app, store } = await guardedHouse(REACHED);
    expect(store.house.linkKey.length * 8).toBeGreaterThanOrEqual(128);
    const body = Buffer.from('{"purpose":"stop-mail","channelId":"mail-0123456789ab"}').toString("base64url");
    const own = signedLink({ purpose: "stop-mail", channelId: "mail-0123456789ab" }, randomBytes(32));
    for (const guess of [
      "0",
      "yard",
      "a".repeat(43),
      `${body}.${randomBytes(32).toString("base64url")}`,
      own,
    ])
      for (const path of ["/answer/", "/stop-mail/"])
        expect((await app.request(path + guess)).status, path + guess).toBe(404);
  });
});

it("8. header injection: a name with line breaks brings no header into a mail", async () => {
  const office = await postOffice();
  const line = mailLine(
    { smtpUrl: office.url, from: "Bench <bench@host.example>", to: [] },
    { answerWaitMs: 5000 },
  );
  onTestFinished(() => line.close());
  const channel = mailChannel(line, {
    name: mailName("a@host.example"),
    to: "a@host.example",
    stopAddress: null,
  });
  const sent = await channel.deliver({
    id: "m1",
    siteId: "yard",
    planId: 1,
    channel: "mail",
    subject: "Friday at Yard\r\nBcc: spy@evil.example\r\n\r\nBody of mine",
    body: "Water.\r\n.\r\nMAIL FROM:<spy@evil.example>\r\n",
    createdUtcMs: 1,
    keepTryingUntilUtcMs: 2,
    state: "waiting",
    tries: 0,
    nextTryUtcMs: 1,
    settledUtcMs: null,
    lastFault: null,
  });
  expect(sent).toEqual({ ok: true });
  expect(office.received).toHaveLength(1);
  expect(office.recipients).toEqual([["a@host.example"]]);
  expect(office.received[0]?.bcc).toBeUndefined();
  expect(office.received[0]?.text).toContain("MAIL FROM");
});

/** A connection that is hung up may say so as an error first. */
function closed(socket: Socket): Promise<void> {
  return new Promise((resolve) => socket.once("close", () => resolve()));
}

describe("9. slow and broken requests", () => {
  async function served() {
    const { app } = await guardedHouse();
    const listening = await listen(app, {
      host: "127.0.0.1",
      port: 0,
      waitsMs: { headers: 400, request: 800 },
    });
    onTestFinished(() => listening.close());
    const port = Number(new URL(listening.url).port);
    const open = async (): Promise<Socket> => {
      const socket = connect(port, "127.0.0.1").on("error", () => undefined);
      await once(socket, "connect");
      return socket;
    };
    return { url: listening.url, open };
  }

  it("sixty that never end are hung up, and the house answers others meanwhile", async () => {
    const { url, open } = await served();
    const slow = await Promise.all(Array.from({ length: 60 }, open));
    const ended = slow.map((socket, index) => {
      socket.resume();
      socket.write(
        index % 2 === 0
          ? "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-A: "
          : "POST /journal/late HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 1000\r\n\r\na",
      );
      return closed(socket);
    });
    expect((await fetch(new URL("healthz", url))).status).toBe(200);
    await Promise.all(ended);
    expect((await fetch(new URL("healthz", url))).status).toBe(200);
  });

  it("bytes that are no request, and requests that say two things, are refused without a fault", async () => {
    const { url, open } = await served();
    const noise = [
      randomBytes(4000),
      "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
      "POST / HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 5\r\nContent-Length: 6\r\n\r\nabcdef",
      "POST /done HTTP/1.1\r\nHost: 127.0.0.1\r\nTransfer-Encoding: chunked\r\n\r\nZZZ\r\n",
      "GET /../../../etc/passwd HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n",
      "GET /%2e%2e/%2e%2e/etc/passwd HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n",
      "GET http://evil.example/ HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n",
      "GET // HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n",
      `GET /${"a".repeat(40_000)} HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n`,
      "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-A: b\nSet-Cookie: c\r\nConnection: close\r\n\r\n",
      "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n",
    ];
    for (const bytes of noise) {
      const socket = await open();
      let heard = "";
      socket.setEncoding("latin1").on("data", (text: string) => {
        heard += text;
      });
      socket.end(bytes);
      await closed(socket);
      expect(heard, String(bytes).slice(0, 60)).toMatch(/^$|^HTTP\/1\.1 [1-4]\d\d /);
      expect(heard).not.toContain("root:");
    }
    expect((await fetch(new URL("healthz", url))).status).toBe(200);
  });
});

describe("10. an oversized upload", () => {
  it("is refused by what it says, and cut off where it says nothing", async () => {
    const { app, store } = await guardedHouse();
    const before = await store.journal.list("yard");
    const big = new Uint8Array(2 * 2 ** 20);
    const form = { "content-type": "application/x-www-form-urlencoded", ...SAME_ORIGIN };
    expect(
      (
        await app.request("/journal/late", {
          method: "POST",
          body: big,
          headers: { ...form, "content-length": String(big.length) },
        })
      ).status,
    ).toBe(413);
    let pulled = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        pulled += 65_536;
        controller.enqueue(new Uint8Array(65_536).fill(97));
      },
    });
    const request = new Request("http://localhost/journal/late", {
      method: "POST",
      body: endless,
      headers: form,
      duplex: "half",
    } as RequestInit);
    expect([400, 413]).toContain((await app.request(request)).status);
    expect(pulled).toBeLessThan(3 * 2 ** 20);
    expect(await store.journal.list("yard")).toEqual(before);
  });

  const sent = async (app: Asked, photo: Uint8Array) => {
    const body = new FormData();
    body.append("photo", new File([Uint8Array.from(photo)], "a.png", { type: "image/png" }));
    const startedMs = performance.now();
    const { status } = await app.request("/pots/p1/photo", { method: "POST", body, headers: SAME_ORIGIN });
    return { status, tookMs: performance.now() - startedMs };
  };

  /** The most that this process held while the work was done, above what it held before, MB. */
  async function grownMb(work: () => Promise<unknown>): Promise<number> {
    const residentMb = () => process.memoryUsage().rss / 2 ** 20;
    const startMb = residentMb();
    let mostMb = startMb;
    const watch = setInterval(() => {
      mostMb = Math.max(mostMb, residentMb());
    }, 5);
    await work();
    clearInterval(watch);
    return Math.max(mostMb, residentMb()) - startMb;
  }

  it("of a picture that swells is refused by its size before it is opened", async () => {
    const { app, store } = await guardedHouse();
    await sent(app, SMALL_PICTURE);
    const before = await store.journal.list("yard");
    const whole = sharp({
      create: { width: 5000, height: 5000, channels: 3, background: "#375" },
      limitInputPixels: false,
    });
    const bombs = [
      // 900 million pixels in 110 kB; opened at eight bits a pixel they are 900 MB.
      flatPng({ widthPx: 30_000, heightPx: 30_000 }),
      // Lines that come in several passes have to be held whole.
      await whole.clone().png({ progressive: true, compressionLevel: 6 }).toBuffer(),
      await whole.clone().jpeg({ progressive: true }).toBuffer(),
      // Says it is huge, and has nothing.
      Buffer.from("89504e470d0a1a0a0000000d494844527fffffff7fffffff0806000000", "hex"),
    ];
    for (const bomb of bombs) {
      expect(bomb.length).toBeLessThan(2 ** 20);
      const mb = await grownMb(async () => {
        expect((await sent(app, bomb)).status).toBe(422);
      });
      expect(mb).toBeLessThan(100);
    }
    expect(await store.journal.list("yard")).toEqual(before);
  });

  it("of the most pixels that are taken is opened line by line", async () => {
    const { app } = await guardedHouse();
    await sent(app, SMALL_PICTURE);
    // 119 million pixels: as RGB 357 MB at once.
    const large = flatPng({ widthPx: 10_900, heightPx: 10_900 });
    const mb = await grownMb(async () => {
      expect((await sent(app, large)).status).toBe(303);
    });
    expect(mb).toBeLessThan(150);
  });

  it("of packed zeros is never unpacked: as a form, as JSON, as a photo", async () => {
    const { app, store } = await guardedHouse();
    const before = await store.journal.list("yard");
    // A gibibyte would come as one mebibyte; a part of it says the same in less time.
    const bomb = zipped(64 * 2 ** 20);
    expect(bomb.length).toBeLessThan(2 ** 18);
    const mb = await grownMb(async () => {
      for (const [path, type] of [
        ["/house/rules", "application/x-www-form-urlencoded"],
        ["/house/rules", "multipart/form-data; boundary=b"],
        ["/api/v1/sites/yard/journal", "application/json"],
        ["/api/v1/sites/yard/pots/p1/photos", "image/png"],
      ] as const)
        for (const encoding of ["gzip", "deflate", "br", "identity"]) {
          const headers = { ...SAME_ORIGIN, "content-type": type, "content-encoding": encoding };
          const answer = await app.request(path, { method: "POST", body: Uint8Array.from(bomb), headers });
          expect([303, 400, 415, 422], `${path} ${type} ${encoding}`).toContain(answer.status);
        }
    });
    expect(mb).toBeLessThan(100);
    expect(await store.journal.list("yard")).toEqual(before);
  });
});

it("11. a window held on to: whatever another page opened is parted from it", async () => {
  const { app } = await guardedHouse(REACHED);
  const policyFor = async (site?: string) => {
    const answer = await app.request("/sign-in", { headers: site ? { "sec-fetch-site": site } : {} });
    return answer.headers.get("cross-origin-opener-policy");
  };
  for (const site of ["cross-site", "same-site", "unheard-of", undefined])
    expect(await policyFor(site), site).toBe("same-origin");
  for (const site of ["none", "same-origin"]) expect(await policyFor(site), site).toBeNull();
});
