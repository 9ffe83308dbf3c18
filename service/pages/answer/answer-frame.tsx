import type { Child } from "hono/jsx";
import type { Words } from "../../words/words.ts";
import { pageText } from "../frame.tsx";
import { PlainMessage } from "../plain-message.tsx";

/** A sheet for whoever holds a link: no way from it to any other page. */
export function answerPage({
  words,
  title,
  children,
}: {
  words: Words;
  title: string;
  children: Child;
}): string {
  return pageText(
    <html lang={words.language}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="robots" content="noindex" />
        <title>{title}</title>
        <link rel="stylesheet" href="/style.css" />
      </head>
      <body>
        <main id="main">{children}</main>
        <footer class="foot">
          <p>{words.say("foot.warnings")}</p>
        </footer>
      </body>
    </html>,
  );
}

/** Says that a link does not work, and what to do instead. */
export function faultPage(words: Words, fault: "link-broken" | "link-expired"): string {
  const title = words.say(`answer.${fault}.title`);
  return answerPage({
    words,
    title,
    children: <PlainMessage title={title} text={words.say(`answer.${fault}.text`)} />,
  });
}

/** An address that holds a permission is kept by no cache; that it is told to no other site holds for every page. */
export const LINK_HEADERS = { "Cache-Control": "no-store" } as const;
