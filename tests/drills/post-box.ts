import { once } from "node:events";
import type { AddressInfo } from "node:net";
import { SMTPServer } from "smtp-server";

export interface PostBox {
  readonly url: string;
  /** Message-ID of every message taken, in order, repeats included. */
  readonly taken: readonly string[];
  close(): Promise<void>;
}

/** A mail server on loopback that takes everything and notes whose Message-ID it was. */
export async function openPostBox(): Promise<PostBox> {
  const taken: string[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    logger: false,
    onData(stream, _session, done) {
      const chunks: Buffer[] = [];
      stream.on("data", (chunk: Buffer) => chunks.push(chunk));
      stream.on("end", () => {
        taken.push(
          Buffer.concat(chunks)
            .toString()
            .match(/^Message-ID:\s*<(.+)>/im)?.[1] ?? "none",
        );
        done();
      });
    },
  });
  // Connections break off when their process is killed.
  server.on("error", () => undefined);
  server.listen(0, "127.0.0.1");
  await once(server.server, "listening");
  const { port } = server.server.address() as AddressInfo;
  return {
    url: `smtp://127.0.0.1:${port}`,
    taken,
    close: () => new Promise((closed) => server.close(() => closed())),
  };
}
