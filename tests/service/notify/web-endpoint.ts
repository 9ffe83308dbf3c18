import { createServer } from "node:https";
import { onTestFinished } from "vitest";
import { opened } from "../feed/loopback-server.ts";
import { selfSigned } from "../feed/self-signed.ts";

export interface Received {
  readonly path: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

/** A TLS endpoint on loopback that keeps what is posted to it; closes with the test. */
export async function webEndpoint() {
  const { key, cert } = selfSigned();
  const received: Received[] = [];
  /** Status of the next answers, 201 when empty; a text leads elsewhere. */
  const answers: (number | string)[] = [];
  const server = createServer({ key, cert }, (request, response) => {
    const parts: Buffer[] = [];
    request.on("data", (part: Buffer) => parts.push(part));
    request.on("end", () => {
      received.push({ path: request.url ?? "", headers: request.headers, body: Buffer.concat(parts) });
      const answer = answers.shift() ?? 201;
      if (typeof answer === "string") response.writeHead(307, { location: answer }).end();
      else response.writeHead(answer).end("what the other side says");
    });
  });
  const { port, close } = await opened(server, () => server.closeAllConnections());
  onTestFinished(close);
  return { url: `https://127.0.0.1:${port}`, ca: cert, received, answers };
}
