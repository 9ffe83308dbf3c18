import { once } from "node:events";
import { createServer, type IncomingMessage, request, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";

export interface PrefixProxy {
  /** Where the house is shown, a slash at its end. */
  readonly url: string;
  /** What was asked outside the path; nothing, if the house knows where it stands. */
  readonly astray: readonly string[];
  close(): Promise<void>;
}

/** A reverse proxy as the README asks for one: shows a house under a path, and says so in the forwarding fields. */
export async function prefixProxy(houseUrl: string, prefix: string): Promise<PrefixProxy> {
  const astray: string[] = [];
  const server = createServer((incoming, response) => {
    const path = incoming.url ?? "";
    if (!path.startsWith(`${prefix}/`)) {
      // Browsers ask for this of themselves.
      if (path !== "/favicon.ico") astray.push(`${incoming.method} ${path}`);
      return void response.writeHead(404).end();
    }
    passOn(incoming, response, { houseUrl, prefix });
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  const close = async () => {
    server.closeAllConnections();
    server.close();
    await once(server, "close");
  };
  return { url: `http://localhost:${port}${prefix}/`, astray, close };
}

function passOn(
  incoming: IncomingMessage,
  response: ServerResponse,
  { houseUrl, prefix }: { houseUrl: string; prefix: string },
): void {
  const { method, headers, socket, url = "" } = incoming;
  const forwarded = {
    ...headers,
    "x-forwarded-for": socket.remoteAddress,
    "x-forwarded-proto": "http",
    "x-forwarded-prefix": prefix,
  };
  const address = new URL(houseUrl);
  const { hostname, port } = address;
  const path = url.slice(prefix.length);
  const outgoing = request({ hostname, port, path, method, headers: forwarded }, (answer) => {
    response.writeHead(answer.statusCode ?? 502, answer.headers);
    answer.pipe(response);
  });
  outgoing.on("error", () => response.destroy());
  incoming.pipe(outgoing);
}
