import type { BriefSection, SignLine } from "../../brief/brief-value.ts";

/** Trouble that was noted, read: causes in order, the one look that tells, and what waits until then. */
export function Signs({ section }: { section: BriefSection<SignLine> }) {
  if (section.lines.length === 0) return null;
  return (
    <section class="signs">
      <h2>{section.heading}</h2>
      <ul class="plain">
        {section.lines.map((line) => (
          <li>
            <p class="deed-head">
              <a href={`/pots/${encodeURIComponent(line.potId)}`}>{line.pot}</a>: {line.seen}
            </p>
            <p class="deed-reason">{line.causes}</p>
            <p>{line.check}</p>
            {line.meanwhile !== null && <p>{line.meanwhile}</p>}
            {line.notes.map((note) => (
              <p class="deed-note">{note}</p>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}
