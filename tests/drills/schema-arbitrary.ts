import fc from "fast-check";

type Schema = Record<string, unknown>;

/** Ids and instants that mean something in the house, beside many that mean nothing. */
const KNOWN = ["yard", "p1", "steps", "plain", "pumice", "coco-peat", "citrus", "e-planted", "Europe/Berlin"];
const INSTANTS = [
  "2031-05-01T08:00Z",
  "2031-04-02T00:00:00.000Z",
  "0001-01-01T00:00Z",
  "2031-02-29T00:00Z",
  "9999-12-31T23:59Z",
];

const ODD: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    "",
    " ",
    "\u0000",
    "\ud800",
    "\u202e",
    "🌵".repeat(400),
    "=1+1",
    "<script>",
    "../../etc",
    "x".repeat(20_000),
  ),
  fc.constantFrom<unknown>(0, -0, -1, 1e308, -1e308, 5e-324, 2 ** 53, 1e21, 0.1 + 0.2, 4_294_967_296),
  fc.constantFrom<unknown>([], {}, [[[[[[]]]]]], { __proto__: null, constructor: 1 }, Array(2000).fill(0)),
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.jsonValue({ maxDepth: 4 }),
);

/** Values as a schema of the OpenAPI document describes them, now and then with something odd in one place. */
export function valuesOf(
  schema: Schema,
  document: { components: { schemas: Record<string, Schema> } },
): fc.Arbitrary<unknown> {
  const build = (at: Schema, depth: number): fc.Arbitrary<unknown> => {
    if (depth > 5) return fc.constant(null);
    return fc.oneof({ weight: 25, arbitrary: plain(at, depth) }, { weight: 1, arbitrary: ODD });
  };
  const plain = (at: Schema, depth: number): fc.Arbitrary<unknown> => {
    if (typeof at.$ref === "string") return build(resolved(at.$ref, document), depth + 1);
    if ("const" in at) return fc.constant(at.const);
    if (Array.isArray(at.enum)) return fc.constantFrom(...at.enum);
    const choices = (at.oneOf ?? at.anyOf) as Schema[] | undefined;
    if (choices) return fc.oneof(...choices.map((choice) => build(choice, depth)));
    switch (at.type) {
      case "object":
        return objectOf(at, (inner) => build(inner, depth + 1));
      case "array":
        return fc.array(build((at.items ?? {}) as Schema, depth + 1), {
          minLength: Number(at.minItems ?? 0),
          maxLength: 4,
        });
      case "string":
        return textOf(at);
      case "number":
        return numberOf(at);
      case "integer":
        return numberOf(at).map(Math.round);
      case "boolean":
        return fc.boolean();
      default:
        return ODD;
    }
  };
  return build(schema, 0);
}

function resolved(ref: string, document: object): Schema {
  return ref
    .slice(2)
    .split("/")
    .reduce<unknown>((at, key) => (at as Schema)[key], document) as Schema;
}

function objectOf(at: Schema, build: (inner: Schema) => fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const properties = (at.properties ?? {}) as Record<string, Schema>;
  const required = (at.required ?? []) as string[];
  const parts = Object.fromEntries(Object.entries(properties).map(([name, inner]) => [name, build(inner)]));
  const known = fc.record(parts, { requiredKeys: required });
  return fc.oneof(
    { weight: 20, arbitrary: known },
    {
      weight: 1,
      arbitrary: fc
        .tuple(known, fc.dictionary(fc.string(), ODD, { maxKeys: 3 }))
        .map(([a, b]) => ({ ...a, ...b })),
    },
  );
}

function textOf({ pattern, maxLength }: Schema): fc.Arbitrary<string> {
  if (typeof pattern === "string" && pattern.includes("T(?:")) return fc.constantFrom(...INSTANTS);
  const most = Math.min(Number(maxLength ?? 40), 40);
  return fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...KNOWN) },
    { weight: 1, arbitrary: fc.string({ minLength: 1, maxLength: most }) },
  );
}

function numberOf({ minimum, maximum, exclusiveMinimum }: Schema): fc.Arbitrary<number> {
  const min = Number(minimum ?? exclusiveMinimum ?? -1000);
  const max = Number(maximum ?? 1000);
  return fc.oneof(
    { weight: 6, arbitrary: fc.double({ min, max: Math.max(min, max), noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(min, max) },
  );
}
