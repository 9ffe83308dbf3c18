import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { calendarFeed, calendarOfDay } from "../../../service/notify/calendar-text.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { collection, outlook, plan, potPlan } from "../brief/plan-builder.ts";

const INPUT = { plan: plan(), collection, words: wordsFor("en", "metric"), houseId: "00ff" };

/** As an independent parser reads it. */
function eventsOf(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents("vevent").map((component) => {
    const event = new ICAL.Event(component);
    const { startDate, endDate } = event;
    return {
      uid: event.uid,
      summary: event.summary,
      description: event.description,
      isDay: startDate.isDate,
      zone: startDate.zone.tzid,
      start: startDate.toString(),
      end: endDate.toString(),
    };
  });
}

const bySummary = (text: string, part: string) =>
  eventsOf(text).find(({ summary }) => summary.includes(part))!;

describe("the calendar", () => {
  const text = calendarFeed(INPUT);

  it("holds shelter, watering and dry hours, in UTC", () => {
    expect(bySummary(text, "Water: Lemon")).toMatchObject({
      isDay: false,
      zone: "UTC",
      start: "2027-05-12T06:30:00Z",
      end: "2027-05-12T07:00:00Z",
    });
    expect(bySummary(text, "Carry under cover: Plumeria").end).toBe("2027-05-12T11:00:00Z");
    expect(bySummary(text, "Carry back out: Aloe").end).toBe("2027-05-14T07:00:00Z");
    expect(bySummary(text, "Dry hours for potting")).toMatchObject({
      start: "2027-05-14T06:00:00Z",
      end: "2027-05-14T10:00:00Z",
    });
    for (const { zone, isDay } of eventsOf(text)) expect(isDay || zone === "UTC").toBe(true);
  });

  it("holds ends of waiting as whole days", () => {
    const dry = potPlan("plumeria", {
      outlook: { ...outlook, dryUntil: "2027-05-19" as never },
      holds: [{ kind: "feed", until: "2027-06-01" as never, because: "fresh-roots" }],
    });
    const waiting = calendarFeed({ ...INPUT, plan: plan({ pots: [dry] }) });
    expect(bySummary(waiting, "Last day of keeping dry: Plumeria")).toMatchObject({
      isDay: true,
      start: "2027-05-19",
      end: "2027-05-20",
    });
    expect(bySummary(waiting, "Last day without feed").start).toBe("2027-06-01");
  });

  it("calls the same deed of the same day the same, when its hour and amount change", () => {
    const later = plan({
      pots: plan().pots.map((one) =>
        one.potId === "lemon" ? { ...one, amountMl: 300, by: "2027-05-12T15:00Z" } : one,
      ),
    });
    const changed = calendarFeed({ ...INPUT, plan: later });
    expect(bySummary(changed, "Water: Lemon").uid).toBe(bySummary(text, "Water: Lemon").uid);
    expect(bySummary(changed, "Water: Lemon").end).toBe("2027-05-12T15:00:00Z");
    const other = calendarFeed({ ...INPUT, houseId: "11ee" });
    expect(bySummary(other, "Water: Lemon").uid).not.toBe(bySummary(text, "Water: Lemon").uid);
    const uids = eventsOf(text).map(({ uid }) => uid);
    expect(new Set(uids).size).toBe(uids.length);
  });

  it("is one text for one plan, in lines that RFC 5545 section 3.1 allows", () => {
    expect(calendarFeed(INPUT)).toBe(text);
    for (const line of text.split("\r\n")) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(text).not.toMatch(/41|GEO|LOCATION/);
  });

  it("carries names with commas, line breaks and other scripts unharmed", () => {
    const pots = collection.pots.map((one) =>
      one.id === "lemon" ? { ...one, name: "লেবু, big;\nSUMMARY:x" } : one,
    );
    const named = calendarFeed({ ...INPUT, collection: { ...collection, pots } });
    expect(eventsOf(named).some(({ summary }) => summary.includes("লেবু, big;\nSUMMARY:x"))).toBe(true);
  });

  it("of the day goes with a mail, and is left out when nothing has an hour", () => {
    const day = calendarOfDay(INPUT);
    expect(day).toContain("METHOD:PUBLISH");
    expect(
      eventsOf(day!)
        .map(({ summary }) => summary.split(":")[0])
        .sort(),
    ).toEqual(["Carry under cover", "Water"]);
    expect(calendarOfDay({ ...INPUT, plan: plan({ pots: [], workWindows: [] }) })).toBeNull();
  });
});
