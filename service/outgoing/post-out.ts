import { Agent, request } from "undici";
import { checkTarget, pinnedLookup, type TargetRule } from "./target-check.ts";

export interface OutgoingPost {
  readonly url: URL;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | Buffer;
}

export interface OutgoingRule extends TargetRule {
  /** Certificates trusted besides the usual ones. */
  readonly ca?: string;
  readonly timeoutMs?: number;
}

export type PostedOut =
  | { readonly kind: "answered"; readonly status: number }
  | { readonly kind: "own-network" | "unknown-host" | "unreachable" };

const TIMEOUT_MS = 10_000;
/** Times the single timeout after which the whole call is given up, so that an answer in drips cannot hold it. */
const WHOLE_CALL_FACTOR = 2;

/**
 * One POST to an address that a person gave: the host looked at first, the same address then connected to, no redirect
 * followed, the answer's body thrown away.
 */
export async function postOut(post: OutgoingPost, rule: OutgoingRule): Promise<PostedOut> {
  const target = await checkTarget(post.url.hostname, rule);
  if (!target.ok) {
    const isUnknown = target.problems[0]?.code === "target-unknown-host";
    return { kind: isUnknown ? "unknown-host" : "own-network" };
  }
  const timeoutMs = rule.timeoutMs ?? TIMEOUT_MS;
  const agent = new Agent({
    connect: {
      lookup: pinnedLookup(target.value),
      timeout: timeoutMs,
      ...(rule.ca === undefined ? {} : { ca: rule.ca }),
    },
    headersTimeout: timeoutMs,
    bodyTimeout: timeoutMs,
  });
  try {
    const { statusCode, body } = await request(post.url, {
      method: "POST",
      dispatcher: agent,
      signal: AbortSignal.timeout(WHOLE_CALL_FACTOR * timeoutMs),
      headers: post.headers,
      body: post.body,
    });
    body.on("error", () => undefined).destroy();
    return { kind: "answered", status: statusCode };
  } catch {
    return { kind: "unreachable" };
  } finally {
    await agent.destroy();
  }
}
