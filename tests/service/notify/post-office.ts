import { once } from "node:events";
import type { AddressInfo } from "node:net";
import { type ParsedMail, simpleParser } from "mailparser";
import { SMTPServer, type SMTPServerOptions } from "smtp-server";
import { onTestFinished } from "vitest";

export interface PostOffice {
  /** For the service's own setting. */
  readonly url: string;
  readonly received: ParsedMail[];
  readonly recipients: string[][];
  /** What the server answers to the next messages, 250 when empty; 0 takes the message and never answers. */
  readonly answers: number[];
  /** Whether each message came over TLS. */
  readonly secure: boolean[];
}

/** A real mail server on loopback that keeps what it is given; closes with the test. */
export async function postOffice(options: SMTPServerOptions = {}): Promise<PostOffice> {
  const received: ParsedMail[] = [];
  const recipients: string[][] = [];
  const answers: number[] = [];
  const secure: boolean[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    logger: false,
    ...options,
    onData(stream, session, done) {
      void simpleParser(stream).then((mail) => {
        const answer = answers.shift() ?? 250;
        if (answer !== 250 && answer !== 0)
          return done(Object.assign(new Error("not now, me@host.example"), { responseCode: answer }));
        received.push(mail);
        recipients.push(session.envelope.rcptTo.map(({ address }) => address));
        secure.push(session.secure);
        if (answer !== 0) done();
      });
    },
  });
  server.on("error", () => undefined);
  server.listen(0, "127.0.0.1");
  await once(server.server, "listening");
  onTestFinished(() => new Promise<void>((closed) => server.close(() => closed())));
  const { port } = server.server.address() as AddressInfo;
  return { url: `smtp://127.0.0.1:${port}`, received, recipients, answers, secure };
}
