import type { Child } from "hono/jsx";
import type { Brief, BriefDeed, BriefStop } from "../../brief/brief-value.ts";
import type { Words } from "../../words/words.ts";
import type { KeptNow } from "../kept-now.ts";
import { Receipt } from "../receipt.tsx";
import { DeedRow, TickForm, tickText } from "./deed-row.tsx";
import { Logged, LoggedDoor, type LoggedToday } from "./logged-today.tsx";
import { Signs } from "./signs.tsx";

export interface TodayProps {
  readonly brief: Brief;
  readonly words: Words;
  readonly isDone: (deed: BriefDeed) => boolean;
  readonly newId: () => string;
  /** What was kept on the page that led here; null when nothing was. */
  readonly kept: KeptNow | null;
  /** What was logged today, newest first. */
  readonly logged: readonly LoggedToday[];
  /** Set when the brief is for an earlier day. */
  readonly staleNote: string | null;
  /** The day strip, where there is weather to draw it from. */
  readonly strip?: Child;
  /** Set when something of the house is worth a look. */
  readonly trouble: string | null;
}

/** Today's brief: deeds on the left, sky on the right where there is room for two columns. */
export function TodayPage(props: TodayProps) {
  const { brief, staleNote } = props;
  return (
    <div class="today">
      <div class="today-head">
        <h1>{brief.dayName}</h1>
        {staleNote !== null && <StaleNote text={staleNote} words={props.words} />}
        {brief.timing.map((line) => (
          <p class="timing">{line}</p>
        ))}
        <Receipt kept={props.kept} backTo="/" newId={props.newId} words={props.words} />
        <p class="lead">{brief.lead}</p>
        <Left {...props} />
        <LoggedDoor {...props} />
      </div>
      <section class="sky" aria-label={props.words.say("today.sky")}>
        {props.strip}
        {brief.sky.map((line) => (
          <p>{line}</p>
        ))}
      </section>
      <div class="deeds-column">
        <Urgent brief={brief} />
        <Stops {...props} />
        <Logged {...props} />
        <KeepDry brief={brief} />
        <Signs section={brief.signs} />
        <Lines section={brief.care} />
        {brief.evening !== null && <p class="nothing">{brief.evening}</p>}
        {brief.nothing.count > 0 && <p class="nothing">{brief.nothing.sentence}</p>}
        <Cautions brief={brief} />
      </div>
      <div class="sky-column">
        <Coming brief={brief} />
        <Lines section={brief.windows} />
        <Lines section={brief.changes} />
        <Lines section={brief.trust} />
        <Trouble text={props.trouble} />
      </div>
      <NextDeed {...props} />
    </div>
  );
}

/** What is left of the deeds once some are ticked: the sentence above counts them as the brief was made. */
function Left({ brief, isDone, words: { say } }: TodayProps) {
  const deeds = brief.stops.flatMap((stop) => stop.deeds);
  const leftCount = deeds.filter((deed) => !isDone(deed)).length;
  return (
    <p id="left" class="left" role="status">
      {leftCount < deeds.length && say("today.left-now", { leftCount })}
    </p>
  );
}

function Trouble({ text }: { text: string | null }) {
  if (text === null) return null;
  return (
    <p class="trouble">
      <a href="/house/status">{text}</a>
    </p>
  );
}

function StaleNote({ text, words }: { text: string; words: Words }) {
  return (
    <form method="post" action="/replan" class="stale">
      <p>{text}</p>
      <button type="submit">{words.say("today.replan")}</button>
    </form>
  );
}

/** Benches fold, so that a long round stays in sight. */
function Stops(props: TodayProps) {
  const { brief, isDone, newId, words } = props;
  return (
    <>
      {brief.stops.map((stop) => (
        <details class="stop" open>
          <summary>
            <h2>{stop.name}</h2>
          </summary>
          <ol class="deeds">
            {stop.deeds.map((deed) => (
              <DeedRow deed={deed} done={isDone(deed)} nonce={newId()} words={words} />
            ))}
          </ol>
          <AllDone {...props} stop={stop} />
        </details>
      ))}
    </>
  );
}

/** From three open deeds on a bench, one tap for all of them; each can still be taken back alone. */
function AllDone({ stop, isDone, newId, words }: TodayProps & { stop: BriefStop }) {
  const open = stop.deeds.filter((deed) => !isDone(deed));
  if (open.length < 3) return null;
  return (
    <form method="post" action="/done" class="all-done">
      {open.map((deed) => (
        <input type="hidden" name="deed" value={tickText(deed, newId())} />
      ))}
      <button type="submit" class="quiet">
        {words.say("today.all-done", { deedCount: open.length, place: stop.name })}
      </button>
    </form>
  );
}

/** The deed of the moment, where the thumb is. */
function NextDeed({ brief, isDone, newId, words }: TodayProps) {
  const next = brief.stops.flatMap((stop) => stop.deeds).find((deed) => !isDone(deed));
  if (!next) return null;
  return (
    <aside class="next" aria-label={words.say("today.next")}>
      <p>
        <span class="verb next-verb">{next.verb}</span> <span class="next-pot">{next.pot}</span>
        <span class="next-facts">
          {[next.amount, next.place, next.hour].filter((part) => part !== null).join(", ")}
        </span>
      </p>
      <TickForm deed={next} nonce={newId()} words={words} />
    </aside>
  );
}

function KeepDry({ brief }: { brief: Brief }) {
  if (brief.keepDry.lines.length === 0) return null;
  return (
    <section class="keep-dry">
      <h2>{brief.keepDry.heading}</h2>
      <ul class="plain">
        {brief.keepDry.lines.map((line) => (
          <li>
            <p class="deed-head">
              <a href={`/pots/${encodeURIComponent(line.potId)}`}>{line.pot}</a>
              {line.until !== null && `, ${line.until}`}
            </p>
            <p class="deed-reason">{line.reason}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What binds the hours of the round comes before the deeds. */
function Urgent({ brief }: { brief: Brief }) {
  const lines = brief.cautions.lines.filter(({ isUrgent }) => isUrgent);
  return lines.map((line) => <p class="urgent">{line.sentence}</p>);
}

function Cautions({ brief }: { brief: Brief }) {
  const lines = brief.cautions.lines.filter(({ isUrgent }) => !isUrgent);
  return (
    <Lines section={{ heading: brief.cautions.heading, lines: lines.map(({ sentence }) => sentence) }} />
  );
}

function Coming({ brief }: { brief: Brief }) {
  if (brief.coming.lines.length === 0) return null;
  return (
    <section class="coming">
      <h2>{brief.coming.heading}</h2>
      {brief.spells.length > 0 && (
        <ul class="spells">
          {brief.spells.map((line) => (
            <li>{line}</li>
          ))}
        </ul>
      )}
      <dl>
        {brief.coming.lines.map((day) => (
          <div>
            <dt>{day.name}</dt>
            <dd>{day.sky}</dd>
            {day.deeds.map((deed) => (
              <dd class="coming-deed">{deed}</dd>
            ))}
          </div>
        ))}
      </dl>
    </section>
  );
}

function Lines({ section }: { section: { heading: string; lines: readonly string[] } }) {
  if (section.lines.length === 0) return null;
  return (
    <section>
      <h2>{section.heading}</h2>
      <ul>
        {section.lines.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
    </section>
  );
}
