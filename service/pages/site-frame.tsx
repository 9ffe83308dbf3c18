import type { Child } from "hono/jsx";
import { calendarDay } from "../../core/site/local-days.ts";
import { missingStep } from "./begin/missing-step.ts";
import { Frame } from "./frame.tsx";
import { whenText } from "./journal/when-text.ts";
import type { PageContext } from "./page-context.ts";
import type { SiteNow } from "./site-now.ts";

/** The sheet of a page of the one site, with its name and the credit of its weather. */
export function SiteFrame({
  context,
  now,
  title,
  here,
  children,
}: {
  context: PageContext;
  now: SiteNow;
  title: string;
  here: string;
  children: Child;
}) {
  const nowUtcMs = context.now();
  const { zone } = now.site;
  return (
    <Frame
      words={context.words}
      title={title}
      here={here}
      siteName={now.site.name}
      demo={context.demo}
      madeAt={whenText(nowUtcMs, { zone, today: calendarDay(nowUtcMs, zone) }, context.words)}
      credit={now.plan?.weatherAge.credit}
    >
      {missingStep(now.collection) !== null && (
        <p>
          <a class="button quiet" href="/begin">
            {context.words.say("begin.onward")}
          </a>
        </p>
      )}
      {children}
    </Frame>
  );
}
