/** What goes into a mail and when: at once and bundled, once a day by the reader's own clock, and nothing that nobody asked for. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { seeNoticesOf } from "#server/notices/list-notices.ts";
import { often } from "#tests/support/long.ts";
import { type MailStudio, openMailStudio } from "#tests/support/mail-studio.ts";

let m: MailStudio;
// Monday, 2 November 2026, 09:00 in London.
beforeEach(async () => {
  m = await openMailStudio();
});
afterEach(() => m.stop());
const mails = () => m.server.arrived.map(({ to, mail }) => `${to[0]?.split("@")[0]}: ${mail.subject}`);
const DAY = 24 * 60;

describe("at once", () => {
  test("[INV-30] only for what somebody asked: nothing before they have chosen, nothing of another kind", async () => {
    m.tell("jonas", "returned");
    await m.run(2);
    m.choose("jonas", { comment: "at-once", returned: "off", signed: "digest" });
    for (const kind of ["returned", "signed"] as const) m.tell("jonas", kind);
    await m.run(2);
    expect(mails()).toEqual([]);
    m.tell("jonas", "comment");
    await m.run(2);
    expect(mails()).toEqual(["jonas: Springline: something new for you"]);
  });

  test("what comes within a minute is one mail for each person, and goes once", async () => {
    m.choose("jonas", { comment: "at-once" });
    m.choose("ines", { offered: "at-once" });
    m.tell("jonas");
    m.tell("ines", "offered");
    await m.run(0.5);
    m.tell("jonas");
    await m.run(0.4);
    expect(mails()).toEqual([]);
    await m.run(0.1);
    await m.run(0.1);
    await m.run(60);
    expect(mails().sort()).toEqual([
      "ines: Springline: a plan waits to be read",
      "jonas: Springline: 2 things wait for you",
    ]);
  });

  test("what was seen within the minute is not mailed", async () => {
    m.choose("jonas", { comment: "at-once" });
    m.tell("jonas");
    seeNoticesOf(m.s.app, m.s.people.jonas, { planId: m.planId });
    await m.run(2);
    expect(mails()).toEqual([]);
  });
});

describe("digest", () => {
  test("one mail a day with all that is new, none when nothing is", async () => {
    m.choose("jonas", { comment: "digest" }, "10:00");
    m.tell("jonas");
    m.tell("jonas");
    await m.run(59);
    expect(mails()).toEqual([]);
    await m.run(1);
    await m.run(1);
    await m.run(120);
    expect(mails()).toEqual(["jonas: Springline: 2 things wait for you"]);
    await m.run(DAY);
    expect(mails()).toHaveLength(1);
    m.tell("jonas");
    await m.run(DAY);
    expect(mails()).toHaveLength(2);
  });

  test("what was seen before, or went at once, is not in it", async () => {
    m.choose("jonas", { comment: "digest", returned: "at-once" }, "12:00");
    m.tell("jonas");
    seeNoticesOf(m.s.app, m.s.people.jonas, { planId: m.planId });
    m.tell("jonas", "returned");
    await m.run(2);
    m.tell("jonas");
    await m.run(200);
    expect(mails()).toEqual([
      "jonas: Springline: something new about a plan of yours",
      "jonas: Springline: something new for you",
    ]);
  });

  test("choosing a time that has passed today waits for tomorrow; a server that was off makes up for one digest", async () => {
    m.tell("jonas");
    m.choose("jonas", { comment: "digest" }, "08:00");
    await m.run(1);
    expect(mails()).toEqual([]);
    // Off over three digests and back at noon.
    await m.run(3 * DAY + 180);
    await m.run(1);
    expect(mails()).toHaveLength(1);
  });

  test("none at all, for somebody who wants no digest", async () => {
    m.choose("jonas", { comment: "digest" }, null);
    m.tell("jonas");
    await m.run(3 * DAY);
    expect(mails()).toEqual([]);
  });
});

describe("over the changes of clocks", () => {
  test.each([
    ["Europe/London", "07:30", Date.UTC(2026, 2, 27, 9)],
    ["Europe/London", "01:30", Date.UTC(2026, 2, 27, 9)],
    ["Europe/London", "01:30", Date.UTC(2026, 9, 23, 9)],
    ["Asia/Kathmandu", "07:30", Date.UTC(2026, 9, 23, 9)],
    ["Australia/Lord_Howe", "01:45", Date.UTC(2026, 3, 3, 9)],
  ])("in %s at %s, six days of runs every half hour or less send six digests", async (timeZone, time, clock) => {
    const every = often(30, 10);
    const own = await openMailStudio({ clock });
    own.choose("jonas", { comment: "digest" }, time, timeZone);
    const times: string[] = [];
    for (let minute = 0; minute < 6 * DAY; minute += every) {
      if (minute % DAY === 0) own.tell("jonas");
      const before = own.server.arrived.length;
      await own.run(every);
      if (own.server.arrived.length > before) {
        const at = new Date(own.s.app.now());
        times.push(at.toLocaleTimeString("en-GB", { timeZone, hour: "2-digit", minute: "2-digit" }));
      }
    }
    await own.stop();
    expect(times).toHaveLength(6);
    // The hour that is left out in spring moves one of them.
    const moved = times.filter((shown) => Math.abs(minutesOf(shown) - minutesOf(time)) > every);
    expect(moved.length).toBeLessThanOrEqual(1);
  });
});
const minutesOf = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

test("while e-mail is not set up, nothing is queued", async () => {
  m.s.db.raw.prepare("delete from studio_setting").run();
  m.choose("jonas", { comment: "at-once" }, "10:00");
  m.tell("jonas");
  await m.run(120);
  expect(m.s.db.raw.prepare("select count(*) as n from mail").get()).toEqual({ n: 0 });
  expect(mails()).toEqual([]);
});
