import type { Child } from "hono/jsx";
import type { MessageKey } from "../words/en.ts";
import type { Words } from "../words/words.ts";

export interface FrameProps {
  readonly words: Words;
  readonly title: string;
  /** Address of the section that the page belongs to. */
  readonly here: string;
  readonly siteName?: string | undefined;
  readonly demo: boolean;
  /** The hour at which the page was made, for reading it later without signal. */
  readonly madeAt?: string | undefined;
  /** Line of credit; given wherever weather is shown. */
  readonly credit?: string | undefined;
  readonly children: Child;
}

const SECTIONS: readonly { address: string; name: MessageKey }[] = [
  { address: "/", name: "nav.today" },
  { address: "/pots", name: "nav.pots" },
  { address: "/mixes", name: "nav.mixes" },
  { address: "/spots", name: "nav.spots" },
  { address: "/sky", name: "nav.sky" },
  { address: "/journal", name: "nav.journal" },
];

/** The sheet on which every page is written. */
export function Frame({ words, title, here, siteName, demo, madeAt, credit, children }: FrameProps) {
  const { say } = words;
  return (
    <html lang={words.language}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="description" content={say("page.description")} />
        <meta name="color-scheme" content="light dark" />
        <title>{siteName === undefined ? title : `${title}, ${siteName}`}</title>
        <link rel="stylesheet" href="/style.css" />
        <link rel="manifest" href="/app.webmanifest" />
        <link rel="icon" href="/icon.svg" type="image/svg+xml" />
        <script src="/app.js" defer />
      </head>
      <body>
        <a class="skip" href="#main">
          {say("nav.skip")}
        </a>
        <header class="head">
          {demo && <p class="demo">{say("brief.demo")}</p>}
          <p class="place">{siteName ?? say("nav.no-site")}</p>
          <nav aria-label={say("nav.label")}>
            <ul>
              {SECTIONS.map(({ address, name }) => (
                <li>
                  <a href={address} aria-current={address === here ? "page" : undefined}>
                    {say(name)}
                  </a>
                </li>
              ))}
            </ul>
          </nav>
        </header>
        <p id="state" class="state" role="status" hidden />
        <Says words={words} madeAt={madeAt} />
        <main id="main">{children}</main>
        <footer class="foot">
          {credit !== undefined && <p>{credit}</p>}
          <p>{say("foot.warnings")}</p>
          {siteName !== undefined && (
            <p class="foot-doors">
              <a href="/holiday">{say("foot.holiday")}</a> <a href="/house">{say("foot.house")}</a>
            </p>
          )}
        </footer>
      </body>
    </html>
  );
}

/** Sentences for the script, so that no word stands in it. */
function Says({ words: { say, locale }, madeAt }: { words: Words; madeAt: string | undefined }) {
  return (
    <div
      id="says"
      hidden
      data-locale={locale}
      data-kept={madeAt === undefined ? say("state.kept-page") : say("state.kept-page-of", { madeAt })}
      data-waiting={say("state.waiting")}
      data-waiting-one={say("state.waiting-one")}
      data-ticked={say("pots.ticked")}
      data-ticked-one={say("pots.ticked-one")}
      data-back={say("today.undo")}
      data-done={say("deed.done")}
      data-left={say("today.left")}
      data-left-one={say("today.left-one")}
      data-left-none={say("today.left-none")}
    />
  );
}

/** A whole page as text. What is drawn ends its own elements, as it may within a drawing: fewer bytes and tokens. */
export function pageText(element: { toString(): string }): string {
  return `<!doctype html>${element}`.replaceAll(/><\/(?:path|circle)>/g, "/>");
}
