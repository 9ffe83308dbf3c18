import type { Child } from "hono/jsx";
import type { HouseStatus } from "../../jobs/house-status.ts";
import { type HousePart, isCopyOld } from "../../jobs/house-troubles.ts";
import type { Saying } from "./saying.ts";

export interface PartProps {
  readonly status: HouseStatus;
  readonly saying: Saying;
  readonly isAmiss: (part: HousePart) => boolean;
}

const HOUR_MS = 3_600_000;

/** Where the weather comes from, how old it is, what is amiss with it and when it is asked for again. */
export function WeatherPart({ status: { weather }, saying, isAmiss }: PartProps) {
  const { words, nowUtcMs, time } = saying;
  const { origin, failingSinceUtcMs, spreadFailingSinceUtcMs, nextPullUtcMs } = weather;
  return (
    <Part heading={words.say("status.weather")} isAmiss={isAmiss("weather")}>
      {origin === null ? (
        <p>{words.say("status.no-weather")}</p>
      ) : (
        <p>
          {words.say("status.fetched", {
            time: time(origin.fetchedUtcMs),
            ageHours: Math.max(0, Math.floor((nowUtcMs - origin.fetchedUtcMs) / HOUR_MS)),
          })}{" "}
          {words.say(`status.source.${origin.source}`)}
        </p>
      )}
      {failingSinceUtcMs !== null && (
        <p class="amiss">
          {words.say("status.failing", {
            failureCount: weather.failuresInRow,
            time: time(failingSinceUtcMs),
          })}{" "}
          {words.say(origin === null ? "status.failing-none" : "status.failing-old")}
        </p>
      )}
      {spreadFailingSinceUtcMs !== null && (
        <p>{words.say("status.spread-failing", { time: time(spreadFailingSinceUtcMs) })}</p>
      )}
      <Lines lines={weather.faults.map(saying.fault)} />
      <p>
        {nextPullUtcMs <= nowUtcMs
          ? words.say("status.next-pull-now")
          : words.say("status.next-pull", { time: time(nextPullUtcMs) })}
      </p>
    </Part>
  );
}

/** When the last brief was made, whether it was late, which days had none, and when the next one is due. */
export function MorningPart({ status: { morning }, saying, isAmiss }: PartProps) {
  const { words, time } = saying;
  const { lastDay, lastMadeUtcMs, missedDays, isOverdue } = morning;
  return (
    <Part heading={words.say("status.morning")} isAmiss={isAmiss("morning")}>
      {lastDay === null || lastMadeUtcMs === null ? (
        <p>{words.say("status.morning-none")}</p>
      ) : (
        <p>
          {words.say("status.morning-made", { forDay: lastDay, time: time(lastMadeUtcMs) })}{" "}
          {morning.wasLate &&
            words.say("status.morning-late", { dueTime: words.clock(morning.dueUtcMs, saying.zone) })}
        </p>
      )}
      {missedDays.length > 0 && (
        <p>
          {words.say("status.morning-missed", {
            missedCount: missedDays.length,
            firstDay: missedDays[0],
            lastDay: missedDays.at(-1),
          })}
        </p>
      )}
      <p class={isOverdue ? "amiss" : undefined}>{nextText(morning, saying)}</p>
      <Lines lines={morning.faults.map(saying.fault)} />
    </Part>
  );
}

function nextText(
  { hasPots, isOverdue, nextUtcMs }: HouseStatus["morning"],
  { words, time }: Saying,
): string {
  if (!hasPots) return words.say("status.morning-no-pots");
  if (isOverdue) return words.say("status.morning-overdue");
  return words.say("status.next-morning", { time: time(nextUtcMs) });
}

/** When the last copy was made and checked, and what kept a newer one from being made. */
export function BackupPart({ status: { backup }, saying, isAmiss }: PartProps) {
  const { words, time, nowUtcMs } = saying;
  const { lastUtcMs, faults } = backup;
  return (
    <Part heading={words.say("status.backup")} isAmiss={isAmiss("backup")}>
      <p>
        {lastUtcMs === null
          ? words.say("status.backup-none")
          : words.say("status.backup-made", { time: time(lastUtcMs) })}
      </p>
      {faults.length === 0 && isCopyOld(lastUtcMs, nowUtcMs) && (
        <p class="amiss">{words.say("status.backup-old")}</p>
      )}
      <Lines lines={faults.map(saying.fault)} />
      {faults.length > 0 && <p>{words.say("status.backup-again")}</p>}
    </Part>
  );
}

/** A part of the house under its heading; one that wants a look is marked at its edge. */
export function Part({ heading, isAmiss, children }: { heading: string; isAmiss: boolean; children: Child }) {
  return (
    <section class={isAmiss ? "status-part status-amiss" : "status-part"}>
      <h2>{heading}</h2>
      {children}
    </section>
  );
}

function Lines({ lines }: { lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <ul>
      {[...new Set(lines)].map((line) => (
        <li>{line}</li>
      ))}
    </ul>
  );
}
