import type { MiddlewareHandler } from "hono";
import { bodyLimit } from "hono/body-limit";
import { problemAnswer } from "../problem-answer.ts";
import { protectiveHeaders, sameOriginOnly } from "./browser-guards.ts";

/** Longest body that is taken, forms and files alike. */
export const LONGEST_BODY_BYTES = 1024 * 1024;

/** What every request passes whoever asks: protective headers, no sending from other sites' pages, no endless bodies. */
export const frontDoor: readonly MiddlewareHandler[] = [
  protectiveHeaders,
  sameOriginOnly,
  bodyLimit({
    maxSize: LONGEST_BODY_BYTES,
    onError: (c) =>
      problemAnswer(c, {
        status: 413,
        code: "body-too-large",
        detail: "This is longer than one mebibyte and was not kept. Send it in smaller parts.",
      }),
  }),
];
