import { type Context, Hono } from "hono";
import type { FeedSettings } from "../feed/feed-settings.ts";
import { openPost, type Post } from "../notify/post.ts";
import type { ReplayDesk } from "../replay/replay-desk.ts";
import type { Store } from "../store/open-store.ts";
import { type HouseWords, houseWords } from "../words/house-words.ts";
import { answerRoutes } from "./answer/answer-routes.tsx";
import { calendarRoutes } from "./answer/calendar-routes.ts";
import { stopMailRoutes } from "./answer/stop-mail-routes.tsx";
import { beginRoutes } from "./begin/begin-routes.tsx";
import { copiesRoutes } from "./copies/copies-routes.tsx";
import { fixedFiles } from "./fixed-files.ts";
import { Frame, pageText } from "./frame.tsx";
import { holidayRoutes } from "./holiday/holiday-routes.tsx";
import { houseRoutes } from "./house/house-routes.tsx";
import { morningsRoutes } from "./house/mornings-routes.tsx";
import { wordsRoutes } from "./house/words-routes.tsx";
import { correctRoutes } from "./journal/correct-routes.tsx";
import { journalRoutes } from "./journal/journal-routes.tsx";
import { lastYearRoutes } from "./last-year/last-year-routes.tsx";
import { componentRoutes } from "./mixes/component-routes.tsx";
import { mixesRoutes } from "./mixes/mixes-routes.tsx";
import type { PageContext } from "./page-context.ts";
import { peopleRoutes } from "./people/people-routes.tsx";
import { photoRoutes } from "./photos/photo-routes.ts";
import { PlainMessage } from "./plain-message.tsx";
import { changeRoutes } from "./pots/change-routes.tsx";
import { pasteRoutes } from "./pots/paste-routes.tsx";
import { potsRoutes } from "./pots/pots-routes.tsx";
import { shelvesRoutes } from "./pots/shelves-routes.tsx";
import { readyPages } from "./ready-pages.ts";
import { skyRoutes } from "./sky/sky-routes.tsx";
import { spotsRoutes } from "./spots/spots-routes.tsx";
import { statusRoutes } from "./status/status-routes.tsx";
import { todayRoutes } from "./today/today-routes.tsx";

export interface AppInput {
  readonly store: Store;
  readonly feed: FeedSettings;
  readonly now: () => number;
  /** The house holds an invented collection. */
  readonly demo?: boolean;
  /** English and metric when left out. */
  readonly words?: HouseWords;
  /** When the morning brief is made; the setting's default when left out. */
  readonly briefAtHour?: number;
  /** Of people and links alone when left out. */
  readonly post?: Post;
  /** None are made when left out. */
  readonly copies?: PageContext["copies"];
  readonly replays?: ReplayDesk | null;
  /** Makes and stores a new plan for the site. */
  replan(siteId: string): Promise<unknown>;
}

const DEFAULT_BRIEF_AT_HOUR = 5.5;

export function pageContext(input: AppInput): PageContext {
  const words = input.words ?? houseWords({ locale: "en", units: "metric" });
  return {
    store: input.store,
    feed: input.feed,
    now: input.now,
    demo: input.demo ?? false,
    words,
    briefAtHour: input.briefAtHour ?? DEFAULT_BRIEF_AT_HOUR,
    post:
      input.post ??
      openPost({
        ...input,
        words,
        mail: null,
        publicUrl: null,
        outgoing: { allowedHosts: [] },
        write: () => undefined,
      }),
    copies: input.copies ?? { dir: null, keepCount: 1 },
    replays: input.replays ?? null,
    replan: (siteId) => input.replan(siteId),
  };
}

/** All pages as one value; whoever serves it listens, and tests ask it directly. */
export function createApp(input: AppInput): Hono {
  const context = pageContext(input);
  const app = new Hono();
  app.route("/", fixedFiles());
  app.route("/", answerRoutes(context));
  app.route("/", stopMailRoutes(context));
  app.route("/", calendarRoutes(context));
  app.use(readyPages(context));
  app.get("/away", (c) => c.html(pageText(<Away context={context} />)));
  app.route("/", todayRoutes(context));
  app.route("/", beginRoutes(context));
  for (const routes of [
    pasteRoutes,
    shelvesRoutes,
    potsRoutes,
    changeRoutes,
    mixesRoutes,
    componentRoutes,
    spotsRoutes,
    photoRoutes,
    skyRoutes,
    journalRoutes,
    correctRoutes,
    houseRoutes,
    wordsRoutes,
    morningsRoutes,
    statusRoutes,
    copiesRoutes,
    peopleRoutes,
    holidayRoutes,
    lastYearRoutes,
  ])
    app.route("/", routes(context));
  app.notFound(missingPage(context));
  return app;
}

/** Said of every address that leads nowhere. */
export function missingPage(context: PageContext): (c: Context) => Response | Promise<Response> {
  return (c) => c.html(pageText(<NotFound context={context} />), 404);
}

/** Shown in place of a page that the device has not kept. */
function Away({ context: { words, demo } }: { context: PageContext }) {
  const title = words.say("away.title");
  return (
    <Frame words={words} title={title} here="" demo={demo}>
      <PlainMessage title={title} text={words.say("away.text")}>
        <p>
          <a href="/">{words.say("nav.today")}</a>
        </p>
      </PlainMessage>
    </Frame>
  );
}

function NotFound({ context: { words, demo } }: { context: PageContext }) {
  const title = words.say("not-found.title");
  return (
    <Frame words={words} title={title} here="" demo={demo}>
      <PlainMessage title={title} text={words.say("not-found.text")}>
        <p>
          <a href="/">{words.say("nav.today")}</a>
        </p>
      </PlainMessage>
    </Frame>
  );
}
