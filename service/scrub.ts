const SECRET_NAMES = /pass|secret|token|key$|apikey|authorization|cookie|smtpurl/i;
const COORDINATE_NAMES = /^(lat|lon|latitude|longitude)(deg)?$/i;
const MARK = "[left out]";
const DEEPEST = 8;

const IN_TEXT: readonly (readonly [RegExp, string])[] = [
  [/(\/\/)[^/@\s]+@/g, `$1${MARK}@`],
  [/(\/(?:answer|stop-mail|calendar)\/)[\w.-]+/g, `$1${MARK}`],
  [/((?:api_?key|token|passphrase|password)["']?[=:]\s*["']?)[^&\s"']+/gi, `$1${MARK}`],
  [/(\b(?:lat|lon|latitude|longitude)(?:Deg)?["']?[=:]\s*)-?\d+(?:\.\d+)?/gi, `$1${MARK}`],
];

/** The value without secrets and coordinates, in names and in running text. Errors become their name, code and message. */
export function scrubbed(value: unknown, secrets: readonly string[], depth = 0): unknown {
  if (typeof value === "string") return scrubbedText(value, secrets);
  if (value === null || typeof value !== "object") return value;
  if (depth >= DEEPEST) return MARK;
  if (Array.isArray(value)) return value.map((one) => scrubbed(one, secrets, depth + 1));
  const fields = value instanceof Error ? errorFields(value) : value;
  return Object.fromEntries(
    Object.entries(fields).map(([name, field]) => [
      name,
      isPrivate(name) ? MARK : scrubbed(field, secrets, depth + 1),
    ]),
  );
}

function scrubbedText(text: string, secrets: readonly string[]): string {
  const known = secrets.filter((secret) => secret.length > 0);
  const without = known.reduce((rest, secret) => rest.replaceAll(secret, MARK), text);
  return IN_TEXT.reduce((rest, [pattern, put]) => rest.replace(pattern, put), without);
}

function errorFields(error: Error): Record<string, unknown> {
  const { name, message, stack, cause } = error;
  const code = "code" in error ? { code: error.code } : {};
  return { name, ...code, message, stack, ...(cause === undefined ? {} : { cause }) };
}

function isPrivate(name: string): boolean {
  return SECRET_NAMES.test(name) || COORDINATE_NAMES.test(name);
}
