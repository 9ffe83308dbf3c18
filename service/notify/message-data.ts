import type { MessageContent } from "./message-content.ts";

/** A message as data for other programs, in one shape for every way: no coordinates, no secrets. */
export function messageData({ id, kind, subject, text, about, links }: MessageContent) {
  return {
    version: 1,
    id,
    kind,
    title: subject,
    text,
    ...(about === null
      ? {}
      : {
          siteId: about.plan.siteId,
          forDay: about.plan.forDay,
          issuedAt: about.plan.issuedAt,
          lead: about.brief.lead,
          deeds: about.brief.stops.flatMap((stop) =>
            stop.deeds.map((deed) => ({
              place: stop.name,
              potId: deed.potId,
              pot: deed.pot,
              action: deed.action,
              amountMl: deed.amountMl,
              untilItRunsThrough: deed.untilItRunsThrough,
              toSpotId: deed.toSpotId,
              dueAt: deed.dueUtcMs === null ? null : new Date(deed.dueUtcMs).toISOString(),
              sentence: deed.sentence,
              reason: deed.reason,
              confidence: deed.confidence,
            })),
          ),
          answers: {
            done: links?.address("done") ?? null,
            notToday: links?.address("not-today") ?? null,
            log: links?.address("log") ?? null,
          },
        }),
  };
}
