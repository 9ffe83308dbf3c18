import { isIP, type LookupFunction, connect as plainConnect } from "node:net";
import { type Duplex, PassThrough } from "node:stream";
import { connect as tlsConnect } from "node:tls";
import { addressKind } from "../outgoing/address-kind.ts";
import { isHomeName } from "../outgoing/home-name.ts";
import { checkTarget, pinnedLookup, type TargetRule } from "../outgoing/target-check.ts";

const USUAL_PORTS = { "mqtt:": 1883, "mqtts:": 8883 } as const;

/**
 * The rule by which the broker's host is looked at. Whoever wrote an address or a name of the home network into the
 * settings has named it; a name that others could answer for must stand among the private targets to lead inside.
 */
export function brokerRule({ hostname }: URL, rule: TargetRule): TargetRule {
  return isHomeName(hostname) ? { ...rule, allowedHosts: [...rule.allowedHosts, hostname] } : rule;
}

/** Opens one connection. Its name is looked up once, what comes of it is checked, and that address is connected to. */
export function brokerStream(url: URL, rule: TargetRule): Duplex {
  const { protocol } = url;
  const host = url.hostname.replace(/^\[|\]$/g, "");
  const port = Number(url.port) || USUAL_PORTS[protocol as keyof typeof USUAL_PORTS];
  // An address is looked up by nobody; what is left to refuse is one under which no service can be.
  if (isIP(host) !== 0 && addressKind(host) === "special") return refusedStream("target-not-callable");
  const at = { host, port, lookup: checkedLookup(brokerRule(url, rule)) };
  if (protocol === "mqtt:") return plainConnect(at);
  return tlsConnect({ ...at, ...(isIP(host) === 0 ? { servername: host } : {}) });
}

/** The look-up of a socket; what may not be called ends it with the problem's code. */
function checkedLookup(rule: TargetRule): LookupFunction {
  return (host, options, done) => {
    void checkTarget(host, rule).then((checked) => {
      if (checked.ok) return pinnedLookup(checked.value)(host, options, done);
      done(refusal(checked.problems[0]!.code), "");
    });
  };
}

function refusedStream(code: string): Duplex {
  return new PassThrough().destroy(refusal(code));
}

function refusal(code: string): NodeJS.ErrnoException {
  return Object.assign(new Error(code), { code });
}
