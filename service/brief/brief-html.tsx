import type { Brief, BriefDeed } from "./brief-value.ts";

// Mail programs drop style sheets, so the little style there is stands in the elements.
const PAPER = "font:16px/1.45 sans-serif;color:#1d1b18;background:#faf7f1;padding:12px;max-width:40em";
const RULE = "border-top:1px solid #aaa194;padding:8px 0;margin:0";
const FAINT = "color:#55504a;font-size:14px";

/** The brief as the body of a mail: no picture, no request to anywhere, readable where styles are dropped. */
export function briefHtml(brief: Brief): string {
  return `<!doctype html>${(
    <html lang={brief.language}>
      <head>
        <meta charset="utf-8" />
        <title>{brief.title}</title>
      </head>
      <body style={PAPER}>
        {brief.demo !== null && <p style={FAINT}>{brief.demo}</p>}
        <h1 style="font-size:22px;margin:0">{brief.title}</h1>
        {[...brief.timing, ...brief.sky].map((line) => (
          <p style="margin:4px 0">{line}</p>
        ))}
        <p style="font-size:18px;margin:4px 0 12px">{brief.lead}</p>
        {brief.cautions.lines
          .filter(({ isUrgent }) => isUrgent)
          .map(({ sentence }) => (
            <p style="color:#8c1712;font-weight:bold">{sentence}</p>
          ))}
        {brief.stops.map((stop) => (
          <>
            <h2 style="font-size:18px;margin:16px 0 4px">{stop.name}</h2>
            {stop.deeds.map((deed) => (
              <Deed deed={deed} />
            ))}
          </>
        ))}
        <Section
          heading={brief.keepDry.heading}
          lines={brief.keepDry.lines.map(
            ({ pot, until, reason }) => `${until ? `${pot}, ${until}` : pot}. ${reason}`,
          )}
        />
        <p>{brief.nothing.sentence}</p>
        <Section
          heading={brief.cautions.heading}
          lines={brief.cautions.lines.filter(({ isUrgent }) => !isUrgent).map(({ sentence }) => sentence)}
        />
        <Section
          heading={brief.coming.heading}
          lines={brief.coming.lines.map(({ name, sky, deeds }) => [`${name}: ${sky}`, ...deeds].join(" "))}
        />
        <Section heading={brief.windows.heading} lines={brief.windows.lines} />
        <Section heading={brief.changes.heading} lines={brief.changes.lines} />
        <Section heading={brief.trust.heading} lines={brief.trust.lines} />
        <p style={FAINT}>{brief.trust.credit}</p>
      </body>
    </html>
  )}`;
}

function Deed({ deed }: { deed: BriefDeed }) {
  return (
    <p style={RULE}>
      <strong>{deed.sentence}</strong>
      <br />
      {deed.reason} ({deed.confidence})
      {deed.notes.map((note) => (
        <>
          <br />
          {note}
        </>
      ))}
    </p>
  );
}

function Section({ heading, lines }: { heading: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <h2 style="font-size:18px;margin:16px 0 4px">{heading}</h2>
      <ul style="margin:0;padding-left:20px">
        {lines.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
    </>
  );
}
