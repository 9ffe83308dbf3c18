import type { Words } from "../words/words.ts";
import type { Brief, BriefDeed, DeedGroup } from "./brief-value.ts";

/** Where the deeds of a brief can be answered; null where no address leads to the house. */
export interface HtmlLinks {
  address(
    purpose: "done" | "not-today" | "log",
    deed?: { readonly potId: string; readonly action: string },
  ): string | null;
}

// Mail programs drop style sheets, so the little style there is stands in the elements.
const PAPER = "font:16px/1.45 sans-serif;color:#1d1b18;background:#faf7f1;padding:12px;max-width:40em";
const RULE = "border-top:1px solid #aaa194;padding:8px 0;margin:0";
const FAINT = "color:#55504a;font-size:14px";
const BUTTON =
  "display:inline-block;padding:12px 16px;margin:0 8px 8px 0;border:1px solid #1d1b18;color:#1d1b18;text-decoration:none";
const LINK = "color:#1d1b18;display:inline-block;padding:6px 0";
/** Deeds with a link of their own; of longer lists the whole is answered. Chosen by us, for the length of the mail. */
const LINKED_AT_MOST = 60;

export interface HtmlHow {
  readonly links: HtmlLinks | null;
  readonly words: Words;
  /** An amendment begins with what is new. */
  readonly changesFirst?: boolean;
}

/** The brief as the body of a mail: no picture, no request to anywhere, readable where styles are dropped. */
export function briefHtml(brief: Brief, { links, words, changesFirst = false }: HtmlHow): string {
  const changes = <Section heading={brief.changes.heading} lines={brief.changes.lines} />;
  let linked = 0;
  const doneAddress = (deed: BriefDeed) =>
    links !== null && ++linked <= LINKED_AT_MOST ? links.address("done", deed) : null;
  if (brief.emptyLine !== null && !changesFirst) return emptyHtml(brief, brief.emptyLine);
  return `<!doctype html>${(
    <html lang={brief.language}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{brief.title}</title>
      </head>
      <body style={PAPER}>
        {brief.demo !== null && <p style={FAINT}>{brief.demo}</p>}
        <h1 style="font-size:22px;margin:0">{brief.title}</h1>
        {changesFirst && changes}
        {[...brief.timing, ...brief.sky].map((line) => (
          <p style="margin:4px 0">{line}</p>
        ))}
        <p style="font-size:18px;margin:4px 0 12px">{brief.lead}</p>
        {brief.cautions.lines
          .filter(({ isUrgent }) => isUrgent)
          .map(({ sentence }) => (
            <p style="color:#8c1712;font-weight:bold">{sentence}</p>
          ))}
        {brief.stops.length > 0 && links !== null && <Answers links={links} words={words} />}
        {brief.stops.map((stop) => (
          <>
            <h2 style="font-size:18px;margin:16px 0 4px">{stop.name}</h2>
            {stop.groups.map((group) => (
              <Group group={group} doneAddress={doneAddress} words={words} />
            ))}
          </>
        ))}
        <Section
          heading={brief.keepDry.heading}
          lines={brief.keepDry.lines.map(({ sentence }) => sentence)}
        />
        <Section
          heading={brief.signs.heading}
          lines={brief.signs.lines.map(({ pot, seen, causes, check, meanwhile, notes }) =>
            [`${pot}: ${seen}`, causes, check, ...(meanwhile === null ? [] : [meanwhile]), ...notes].join(
              " ",
            ),
          )}
        />
        <Section heading={brief.care.heading} lines={brief.care.lines} />
        {brief.evening !== null && <p>{brief.evening}</p>}
        {brief.stops.length > 0 && <p>{brief.nothing.sentence}</p>}
        <Section
          heading={brief.cautions.heading}
          lines={brief.cautions.lines.filter(({ isUrgent }) => !isUrgent).map(({ sentence }) => sentence)}
        />
        <Section
          heading={brief.coming.heading}
          lines={[
            ...brief.spells,
            ...brief.coming.lines.map(({ name, sky, deeds }) => [`${name}: ${sky}`, ...deeds].join(" ")),
          ]}
        />
        <Section heading={brief.windows.heading} lines={brief.windows.lines} />
        {!changesFirst && changes}
        <Section heading={brief.trust.heading} lines={brief.trust.lines} />
        <p style={FAINT}>{brief.trust.credit}</p>
      </body>
    </html>
  )}`;
}

/** A day that asks for nothing is one line here too. */
function emptyHtml({ language, title }: Brief, line: string): string {
  return `<!doctype html>${(
    <html lang={language}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{title}</title>
      </head>
      <body style={PAPER}>
        <p style="margin:0">{line}</p>
      </body>
    </html>
  )}`;
}

function Answers({ links, words }: { links: HtmlLinks; words: Words }) {
  return (
    <p style="margin:8px 0">
      {(["done", "not-today", "log"] as const).map((purpose) => {
        const address = links.address(purpose);
        return (
          address !== null && (
            <a style={BUTTON} href={address}>
              {words.say(`answer.all.${purpose}`)}
            </a>
          )
        );
      })}
    </p>
  );
}

interface GroupProps {
  readonly group: DeedGroup;
  readonly words: Words;
  doneAddress(deed: BriefDeed): string | null;
}

function Group({ group, doneAddress, words }: GroupProps) {
  const [first] = group.deeds;
  return (
    <div style={RULE}>
      <strong>{group.sentence}</strong>
      {group.items.length > 0 && (
        <ul style="margin:4px 0;padding-left:20px">
          {group.items.map((item, index) => (
            <li>
              {item} <DoneLink deed={group.deeds[index]!} doneAddress={doneAddress} words={words} />
            </li>
          ))}
        </ul>
      )}
      <div>
        {group.reason} ({group.confidence})
      </div>
      {group.notes.map((note) => (
        <div>{note}</div>
      ))}
      {group.items.length === 0 && <DoneLink deed={first!} doneAddress={doneAddress} words={words} />}
    </div>
  );
}

function DoneLink({ deed, doneAddress, words }: Omit<GroupProps, "group"> & { deed: BriefDeed }) {
  const address = doneAddress(deed);
  if (address === null) return null;
  return (
    <a style={LINK} href={address} aria-label={words.say("deed.tick-label", { sentence: deed.sentence })}>
      {words.say("answer.done")}
    </a>
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
