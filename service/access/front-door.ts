import type { MiddlewareHandler } from "hono";
import { bodyLimit } from "hono/body-limit";
import { problemAnswer } from "../problem-answer.ts";
import { protectiveHeaders, sameOriginOnly } from "./browser-guards.ts";

/** Longest body that is taken, forms and files alike. */
export const LONGEST_BODY_BYTES = 1024 * 1024;
/** A photo as phones take it; it is made small before it is kept. */
export const LONGEST_PHOTO_BYTES = 16 * 1024 * 1024;

const upTo = (maxSize: number, tooLong: string) =>
  bodyLimit({
    maxSize,
    onError: (c) => problemAnswer(c, { status: 413, code: "body-too-large", detail: tooLong }),
  });

const FORMS = upTo(
  LONGEST_BODY_BYTES,
  "This is longer than one mebibyte and was not kept. Send it in smaller parts.",
);
const PHOTOS = upTo(
  LONGEST_PHOTO_BYTES,
  "This photo is larger than 16 mebibytes and was not kept. Send a smaller one.",
);

/** Where the pages and the interface take a photo. */
const PHOTO_PATH = /\/pots\/[^/]+\/photos?$/;
/** Asking brings no body (the Fetch Standard, Request); looking for one costs as much as a ready page. */
const WITHOUT_BODY = new Set(["GET", "HEAD"]);

const noEndlessBodies: MiddlewareHandler = (c, next) => {
  if (WITHOUT_BODY.has(c.req.method)) return next();
  return (PHOTO_PATH.test(c.req.path) ? PHOTOS : FORMS)(c, next);
};

/** What every request passes whoever asks: protective headers, no sending from other sites' pages, no endless bodies. */
export const frontDoor: readonly MiddlewareHandler[] = [protectiveHeaders, sameOriginOnly, noEndlessBodies];
