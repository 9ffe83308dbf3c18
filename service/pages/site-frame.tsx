import type { Child } from "hono/jsx";
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
  return (
    <Frame
      words={context.words}
      title={title}
      here={here}
      siteName={now.site.name}
      demo={context.demo}
      madeAt={whenText(context.now(), now.site.zone, context.words)}
      credit={now.plan?.weatherAge.credit}
    >
      {children}
    </Frame>
  );
}
