import { describe, expect, it } from "vitest";
import { calendarOf, joinedCalendarOf } from "#lib/month/ics/feed.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { FEED_STUDIO, feedMonth, feedSlot } from "#tests/support/feed-month.ts";
import { readByIcalJs, readByNodeIcal } from "#tests/support/read-feed.ts";

const readOf = (month: MonthFile, of = {}) => readByIcalJs(calendarOf(month, of)).events;
const uidsOf = (month: MonthFile) => readOf(month).map(({ uid }) => uid);
const PLAN = {
  title: "Long way round",
  seconds: 1500,
  signed: true,
  edition: 3,
  equipment: "long-rail",
  groups: {},
  moves: {},
  push: 0,
  pull: 0,
  metMinutes: 100,
  talkSeconds: 900,
} as const;

describe("what an event says", () => {
  const words = (changed: Partial<MonthFile>, slot = {}) => {
    const [event] = readOf(feedMonth({ slots: [feedSlot(slot)], ...changed }));
    return { summary: event?.summary, description: event?.description, location: event?.location };
  };
  const themes = { upper: { name: "Upper body" }, untold: { name: "" } };

  it("is named by its theme, else its plan, else as a class", () => {
    const both = { themes, plans: { a: PLAN } };
    expect(words(both, { theme: "upper", plan: "a" }).summary).toBe("Upper body");
    expect(words(both, { plan: "a" }).summary).toBe("Long way round");
    expect(words(both, { theme: "untold", plan: "a" }).summary).toBe("Long way round");
    expect(words(both).summary).toBe("Class");
  });

  it("says who leads it, and how far the plan is", () => {
    const planned = (plan: MonthFile["plans"][string]) => words({ plans: { a: plan } }, { plan: "a" }).description;
    const { edition: _, ...unnumbered } = PLAN;
    expect(planned(PLAN)).toBe("Coach: Marta\nPlan: Long way round, edition 3");
    expect(planned(unnumbered)).toBe("Coach: Marta\nPlan: Long way round, signed");
    expect(planned({ ...unnumbered, signed: false })).toBe("Coach: Marta\nPlan: Long way round, not signed");
    expect(words({}, { coach: null }).description).toBe("No plan yet");
  });

  it("says nothing of a plan that is not known, and never the team's note", () => {
    const feed = calendarOf(
      feedMonth({
        plans: { a: { title: "Secret rehearsal", known: false } },
        slots: [feedSlot({ plan: "a", note: "Ask about the knee" })],
      }),
      {},
    );
    expect(feed).not.toMatch(/Secret|knee/);
    expect(feed).toContain("SUMMARY:Class\r\n");
    expect(feed).toContain("DESCRIPTION:Coach: Marta\\nNo plan yet\r\n");
  });

  it("has no place without a room", () => expect(words({}, { room: null }).location).toBeNull());

  it("copes with ids that every object has", () => {
    const feed = calendarOf(feedMonth({ slots: [feedSlot({ theme: "constructor", plan: "constructor" })] }), {});
    expect(feed).toContain("SUMMARY:Class\r\n");
  });
});

describe("whose classes", () => {
  const month = feedMonth({
    slots: [
      feedSlot({ id: "mine" }),
      feedSlot({ id: "given-away", start: "08:00", coach: "jonas", formerCoaches: ["marta"], sequence: 1 }),
      feedSlot({ id: "came-back", start: "09:00", formerCoaches: ["marta", "jonas"] }),
      feedSlot({ id: "moved", start: "10:00", coach: "jonas", room: "loft", formerRooms: ["harbour"] }),
      feedSlot({ id: "out", start: "11:00", out: true }),
    ],
  });
  const said = (of = {}) =>
    readOf(month, of).map(({ wall, status, transparent }) => [wall.slice(11), status, transparent]);

  it("are all of them in the studio's", () =>
    expect(said().map(([, status]) => status)).toEqual([
      "CONFIRMED",
      "CONFIRMED",
      "CONFIRMED",
      "CONFIRMED",
      "CANCELLED",
    ]));

  it("stay in a former coach's as cancelled, and take no time", () =>
    expect(said({ coach: "marta" })).toEqual([
      ["07:00", "CONFIRMED", false],
      ["08:00", "CANCELLED", true],
      ["09:00", "CONFIRMED", false],
      ["11:00", "CANCELLED", true],
    ]));

  it("stay in a former room's as cancelled", () => {
    expect(said({ room: "loft" })).toEqual([["10:00", "CONFIRMED", false]]);
    expect(said({ room: "harbour" }).at(3)).toEqual(["10:00", "CANCELLED", true]);
  });

  it("has a UID and a name of its own", () => {
    const read = [{}, { coach: "marta" }, { room: "loft" }].map((of) => readByIcalJs(calendarOf(month, of)));
    expect(read.map(({ name }) => name)).toEqual(["March", "March, Marta", "March, Loft"]);
    expect(new Set(read.map(({ uid }) => uid)).size).toBe(3);
  });

  it("leaves out days before the month", () => {
    const dates = { from: "2026-03-01", to: "2026-03-31", known: "2026-02-20" };
    expect(readOf(feedMonth({ dates, slots: [feedSlot({ date: "2026-02-27" })] }))).toEqual([]);
  });
});

describe("what stays and what changes", () => {
  it("is the same octet for octet when nothing changed", () => {
    const month = feedMonth();
    expect(calendarOf(structuredClone(month), {})).toBe(calendarOf(month, {}));
  });

  it("keeps the UID of a class that is moved, handed over, renamed or taken out", () => {
    const before = uidsOf(feedMonth());
    const after = feedSlot({
      date: "2026-03-30",
      start: "18:15",
      minutes: 50,
      room: "loft",
      coach: "jonas",
      out: true,
    });
    expect(uidsOf(feedMonth({ slots: [after] }))).toEqual(before);
    const renamed = { ...FEED_STUDIO, name: "Tholepin Strength" };
    expect(uidsOf(feedMonth({ title: "Spring", zone: "Australia/Sydney", studio: renamed }))).toEqual(before);
    expect(uidsOf(feedMonth({ studio: { ...FEED_STUDIO, uid: "6f1d3c52-8f0a-4d8b-9a57-2b1f5f0f7a12" } }))).not.toEqual(
      before,
    );
  });

  it("is stamped with the slot's last change, the calendar with the latest of all", () => {
    const changed = feedSlot({ id: "b", start: "09:00", changedAt: "2026-02-25T11:00:00Z", sequence: 4 });
    const read = readByIcalJs(calendarOf(feedMonth({ slots: [feedSlot(), changed] }), {}));
    expect(read.events.map(({ stamp }) => stamp)).toEqual(["2026-02-20T09:30:00Z", "2026-02-25T11:00:00Z"]);
    expect(read.events.map(({ sequence }) => sequence)).toEqual([0, 4]);
    expect(read.changedAt).toBe("2026-02-25T11:00:00Z");
    // Jonas's calendar does not hold that class.
    const jonas = calendarOf(feedMonth({ slots: [changed] }), { coach: "jonas" });
    expect(readByIcalJs(jonas).changedAt).toBe("2026-02-20T09:30:00Z");
  });

  it("is in order of the instant, then of the id", () => {
    const at = (id: string, start: string) => feedSlot({ id, start, date: "2026-11-01" });
    const slots = [at("c", "07:00"), at("a", "07:00"), at("b", "06:59"), at("b0", "07:00")];
    const month = feedMonth({ zone: "America/New_York", dates: { from: "2026-11-01", to: "2026-11-01" }, slots });
    const one = (id: string) => uidsOf({ ...month, slots: [at(id, "07:00")] })[0];
    expect(uidsOf(month)).toEqual(["b", "a", "b0", "c"].map(one));
    // On 8 March 02:30 does not occur and counts as 03:30, so it comes after 03:15.
    const gap = [
      feedSlot({ id: "gap", date: "2026-03-08", start: "02:30" }),
      feedSlot({ id: "next", date: "2026-03-08", start: "03:15" }),
    ];
    expect(uidsOf({ ...month, dates: { from: "2026-03-08", to: "2026-03-08" }, slots: gap })).toEqual(
      ["next", "gap"].map(one),
    );
  });
});

describe("several months in one calendar", () => {
  const march = feedMonth({ dates: { from: "2026-03-01", to: "2026-03-31" } });
  const april = feedMonth({
    title: "April",
    changedAt: "2026-03-02T08:00:00Z",
    dates: { from: "2026-04-01", to: "2026-04-30" },
    slots: [feedSlot({ id: "later", date: "2026-04-04" })],
  });

  it("is named without the month, and is the same calendar as each", () => {
    const read = readByIcalJs(joinedCalendarOf([march, april], { coach: "marta" }));
    expect(read.name).toBe("Tidewater Strength, Marta");
    expect(read.uid).toBe(readByIcalJs(calendarOf(march, { coach: "marta" })).uid);
    expect(read.changedAt).toBe("2026-03-02T08:00:00Z");
    expect(read.events).toEqual([...readOf(march), ...readOf(april)]);
  });

  it("holds the later revision of a class that stands in two of them", () => {
    const old = feedSlot({ id: "later", date: "2026-03-31", sequence: 1, out: true });
    const read = (second: MonthFile) =>
      readByIcalJs(joinedCalendarOf([feedMonth({ slots: [old] }), second], {})).events;
    expect(read(april).map(({ wall, status }) => [wall, status])).toEqual([["2026-03-31T07:00", "CANCELLED"]]);
    const newer = { ...april, slots: [feedSlot({ id: "later", date: "2026-04-04", sequence: 2 })] };
    expect(read(newer).map(({ wall, status }) => [wall, status])).toEqual([["2026-04-04T07:00", "CONFIRMED"]]);
  });

  it("has each zone that its classes need", () => {
    const moved = { ...april, zone: "America/New_York" };
    const feed = joinedCalendarOf([march, moved], {});
    expect(feed.match(/^TZID:.*$/gm)).toEqual(["TZID:Europe/Lisbon", "TZID:America/New_York"]);
    const instants = ["2026-03-28T07:00:00Z", "2026-04-04T11:00:00Z"];
    expect(readByIcalJs(feed).events.map(({ from }) => from)).toEqual(instants);
    expect(readByNodeIcal(feed).map(({ from }) => from)).toEqual(instants);
  });

  it("names somebody who is no longer in the newest month", () => {
    const without = { ...april, coaches: {}, slots: [] };
    expect(readByIcalJs(joinedCalendarOf([march, without], { coach: "marta" })).name).toBe("Tidewater Strength, Marta");
  });
});
