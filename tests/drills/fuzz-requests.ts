import fc from "fast-check";
import { ACCESS_TABLE } from "../../service/access/access-table.ts";
import { API_ROOT } from "../../service/api/api-route.ts";
import { API_ROUTES } from "../../service/api/api-routes.ts";
import { openApiDocument } from "../../service/api/openapi.ts";
import { BOMBS, SMALL_PICTURE } from "./bombs.ts";
import { valuesOf } from "./schema-arbitrary.ts";

/** One request as it will be sent; `asker` is put into headers by the drill. */
export interface FuzzRequest {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | Uint8Array | null;
  /** `leaver`: somebody who signed in just for this request, so that signing out ends nobody else's session. */
  readonly asker: "owner" | "helper" | "viewer" | "nobody" | "elsewhere" | "leaver";
}

type Document = {
  paths: Record<string, unknown>;
  components: { schemas: Record<string, Record<string, unknown>> };
};
const document = JSON.parse(JSON.stringify(openApiDocument(API_ROUTES))) as Document;

const ASKER = fc.constantFrom<FuzzRequest["asker"]>(
  "owner",
  "owner",
  "owner",
  "owner",
  "helper",
  "viewer",
  "nobody",
  "elsewhere",
);

const PATH_PART = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.constantFrom("yard", "p1", "steps", "plain", "e-planted", "new", "pumice", "citrus"),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 30 }).map(encodeURIComponentSafely) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      "%00",
      "%2e%2e",
      "..%2f..%2fetc",
      "%ff%fe",
      "%",
      "a".repeat(3000),
      "__proto__",
      "%F0%9F%8C%B5",
      ";x=1",
      "%0d%0aX-A:1",
    ),
  },
);

const HEADERS = fc.record(
  {
    "if-match": fc.constantFrom("*", '"x"', "W/", '"', "\u00e9"),
    "if-none-match": fc.constantFrom("*", '"x"', ","),
    "idempotency-key": fc.constantFrom("k1", "k2", " ", "x".repeat(300)),
    accept: fc.constantFrom("text/html", "application/json", "*/*", ""),
    "accept-encoding": fc.constantFrom("gzip", "br", "x"),
    "x-forwarded-for": fc.constantFrom("192.0.2.1", "a, b", "::1"),
    "x-forwarded-prefix": fc.constantFrom("/b", "//x"),
    range: fc.constantFrom("bytes=0-", "bytes=-1"),
    "content-encoding": fc.constantFrom("gzip"),
  },
  { requiredKeys: [] },
);

const NOISE: fc.Arbitrary<string | Uint8Array> = fc.oneof(
  fc.uint8Array({ maxLength: 200 }),
  fc.constantFrom(...BOMBS),
  fc.constantFrom(
    "[".repeat(50_000),
    '{"a":'.repeat(20_000),
    '"',
    "nul",
    `{"id":${"9".repeat(5000)}}`,
    "\ufeff{}",
  ),
  fc.json({ maxDepth: 8 }),
);

const TYPES = [
  "application/json",
  "application/json; charset=utf-16",
  "text/plain",
  "multipart/form-data; boundary=b",
  "application/x-www-form-urlencoded",
  "",
];

/** Fields that the pages' forms have, with values of every kind. */
const FORM = fc
  .dictionary(
    fc.constantFrom(
      "name",
      "text",
      "kind",
      "formId",
      "deed",
      "potId",
      "entryId",
      "ofEntryId",
      "what",
      "waterMl",
      "day",
      "clock",
      "latDeg",
      "lonDeg",
      "elevationM",
      "zone",
      "topCm",
      "baseCm",
      "heightCm",
      "part.pumice",
      "part.coco-peat",
      "skyFrac",
      "walkOrder",
      "horizonDays",
      "tripWorth",
      "dayStartsHour",
      "dayEndsHour",
      "rows",
      "locale",
      "units",
      "groupId",
      "mixId",
      "spotId",
      "role",
      "backTo",
      "happenedAtUtcMs",
      "address",
      "sinceDay",
      "rainMm",
      "minC",
      "do",
      "mayDo",
      "days",
      "search",
      "for",
      "passphrase",
      "again",
      "fresh",
      "code",
      "back",
      "table",
      "place",
    ),
    fc.oneof(
      fc.constantFrom(
        "p1",
        "plain",
        "steps",
        "citrus",
        "note",
        "watered",
        "12",
        "-1",
        "1e999",
        "2031-05-01",
        "Europe/Berlin",
        "form-12345678",
        "potId=p1&action=water&entryId=tick.12345678",
        "en-GB",
        "metric",
        "the fig on the stairs",
        "owner",
        "/pots",
        "//evil.example",
      ),
      fc.string({ maxLength: 40 }),
      fc.constantFrom(
        "\u0000",
        "=cmd|'/c calc'!A1",
        "<img src=x onerror=alert(1)>",
        "\r\nBcc: a@b.example",
        "9".repeat(400),
        "٣",
        "1,5",
      ),
    ),
    { maxKeys: 14 },
  )
  .map((fields) => new URLSearchParams(fields).toString());

const PICTURE_TYPE = fc.constantFrom("image/png", "image/jpeg", "image/webp", "image/gif");
const PICTURES = fc.oneof(fc.constantFrom(SMALL_PICTURE, ...BOMBS), fc.uint8Array({ maxLength: 200 }));

function apiRequests(): fc.Arbitrary<FuzzRequest> {
  return fc.constantFrom(...API_ROUTES).chain((route) => {
    const good = route.body
      ? valuesOf({ $ref: `#/components/schemas/${route.id}Body` }, document)
      : fc.constant(null);
    return fc.record({
      method: fc.constant<string>(route.method),
      path: pathOf(API_ROOT + route.path.replace(/\{(\w+)\}/g, ":$1")),
      headers: fc.tuple(HEADERS, fc.constantFrom("*", null), PICTURE_TYPE).map(([headers, match, type]) => ({
        "content-type": route.takesBytes ? type : "application/json",
        ...(match && route.method === "PUT" ? { "if-match": match } : {}),
        ...headers,
      })),
      body: route.takesBytes
        ? PICTURES
        : route.body
          ? fc.oneof(
              { weight: 9, arbitrary: good.map((value) => JSON.stringify(value)) },
              { weight: 1, arbitrary: NOISE },
            )
          : fc.constant(null),
      asker: ASKER,
    });
  });
}

/** Signing out, by whatever name: whoever asked has no session afterwards. */
const LEAVING = new Set([
  "POST /sign-out",
  "POST /house/access/sign-out-everywhere",
  "POST /house/access/passphrase",
]);

/** Every route of the table, each as often as another. */
function pageRequests(): fc.Arbitrary<FuzzRequest> {
  const rows = ACCESS_TABLE.filter(([, path]) => !path.startsWith(API_ROOT));
  return fc.constantFrom(...rows).chain(([method, path]) =>
    fc
      .record({
        method: fc.constant<string>(method),
        path: pathOf(path),
        headers: fc
          .tuple(HEADERS, fc.constantFrom(...TYPES))
          .map(([headers, type]) => ({ "content-type": type, ...headers })),
        body:
          method === "GET"
            ? fc.constant(null)
            : fc.oneof({ weight: 6, arbitrary: FORM }, { weight: 1, arbitrary: NOISE }),
        asker: LEAVING.has(`${method} ${path}`) ? fc.constantFrom("leaver", "nobody", "owner") : ASKER,
      })
      .map((request) =>
        typeof request.body === "string" && request.method === "POST" && request.body.includes("=")
          ? {
              ...request,
              headers: { ...request.headers, "content-type": "application/x-www-form-urlencoded" },
            }
          : request,
      ),
  );
}

const STRAY: fc.Arbitrary<FuzzRequest> = fc.record({
  method: fc.constantFrom("GET", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "HEAD"),
  path: fc.array(PATH_PART, { maxLength: 5 }).map((parts) => `/${parts.join("/")}`),
  headers: HEADERS,
  body: fc.constant(null),
  asker: ASKER,
});

function pathOf(pattern: string): fc.Arbitrary<string> {
  const parts = pattern.split("/").map((part) => (part.startsWith(":") ? PATH_PART : fc.constant(part)));
  const query = fc.oneof(
    { weight: 3, arbitrary: fc.constant("") },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        "?limit=9999999999",
        "?after=%00",
        "?limit=-1&after=x",
        "?part.pumice=1e309",
        "?part.pumice=2&topCm=-4",
        "?spot=steps",
        "?start=x",
        "?search=%F0",
        `?q=${"a".repeat(4000)}`,
        "?__proto__=1",
      ),
    },
  );
  return fc.tuple(fc.tuple(...parts), query).map(([filled, asked]) => filled.join("/") + asked);
}

function encodeURIComponentSafely(text: string): string {
  return encodeURIComponent(text.replace(/[\ud800-\udfff]/g, "?"));
}

/** Requests that a seed foretells, over every route of the interface and the pages, and beside them. */
export function fuzzRequests(seed: number, count: number): FuzzRequest[] {
  return fc.sample(
    fc.oneof(
      { weight: 6, arbitrary: apiRequests() },
      { weight: 5, arbitrary: pageRequests() },
      { weight: 1, arbitrary: STRAY },
    ),
    { seed, numRuns: count },
  );
}
