import { pipeline, type Readable } from "node:stream";
import { createGunzip } from "node:zlib";

/** The body went past the limit; thrown inside the reader and turned into a problem by the caller. */
export class BodyTooLarge extends Error {}

/** The bytes are not text in the charset that the answer names. */
export class BodyNotText extends Error {}

/**
 * Body as text, unpacked when gzipped. The limit counts unpacked bytes, so that a small bomb cannot fill memory.
 *
 * @throws BodyTooLarge, BodyNotText, or the stream's own error
 */
export async function readBody(input: {
  body: Readable;
  encoding: string;
  contentType: string;
  maxBodyBytes: number;
}): Promise<string> {
  const source = unpacked(input.body, input.encoding);
  const chunks: Buffer[] = [];
  let total = 0;
  try {
    for await (const chunk of source as AsyncIterable<Buffer>) {
      total += chunk.length;
      if (total > input.maxBodyBytes) throw new BodyTooLarge();
      chunks.push(chunk);
    }
  } finally {
    source.destroy();
    input.body.destroy();
  }
  return decoded(Buffer.concat(chunks), input.contentType);
}

function unpacked(body: Readable, encoding: string): Readable {
  if (encoding !== "gzip" && encoding !== "x-gzip") return body;
  // Errors surface through the iteration of the last stream; the callback only keeps them from being unhandled.
  return pipeline(body, createGunzip(), () => undefined);
}

function decoded(bytes: Buffer, contentType: string): string {
  const charset = /charset=["']?([\w-]+)/i.exec(contentType)?.[1] ?? "utf-8";
  try {
    return new TextDecoder(charset, { fatal: true }).decode(bytes);
  } catch {
    throw new BodyNotText();
  }
}
