/** RFC 5545 §3.3.8: an INTEGER is -2147483648 to 2147483647. */
import { expect, it } from "vitest";
import { calendarOf } from "#lib/month/ics/feed.ts";
import { boundedFile, MOST_TAKEN_NUMBER } from "#lib/programme/bounded-file.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { importMonth } from "#lib/programme/import-file.ts";
import { keepRevisions } from "#lib/programme/keep-revisions.ts";
import { monthFileOf } from "#lib/programme/month-file.ts";
import { readMonthState } from "#lib/programme/read.ts";
import { changeSlot } from "#lib/programme/write.ts";
import { FEED_STUDIO, feedMonth, feedSlot } from "#tests/support/feed-month.ts";

const NOW = Date.UTC(2026, 2, 1, 12);
const PRESENT = "2026-03-01T12:00:00Z";
const LATE = "2099-12-31T00:00:00Z";

it("takes what a calendar can tell as it is, and says nothing", () => {
  const file = feedMonth({ slots: [feedSlot({ sequence: MOST_TAKEN_NUMBER, changedAt: PRESENT })] });
  expect(boundedFile(file, NOW)).toEqual({ file, notes: [] });
});

it("counts a higher number anew and takes a time to come for now, and says both", () => {
  const file = feedMonth({ changedAt: LATE, slots: [feedSlot({ sequence: 2 ** 31 - 1, changedAt: LATE })] });
  const { file: taken, notes } = boundedFile(file, NOW);
  expect(taken.changedAt).toBe(PRESENT);
  expect(taken.slots).toEqual([feedSlot({ changedAt: PRESENT })]);
  expect(notes).toEqual([
    "The number of changes of 1 class is above 1,000,000. It is counted anew here.",
    "The file says that the month and 1 class changed at a time to come. That counts as now.",
  ]);
});

it("goes on above what calendars were told, even where that is the greatest that they can tell", () => {
  const doc = createMonthDoc("2026-03");
  const known = { at: NOW, signedAt: null, nearUntil: "" };
  const has = { room: () => false, coach: () => false, plan: () => false };
  const take = (sequence: number) =>
    doc.transact(() =>
      importMonth(doc, boundedFile(feedMonth({ slots: [feedSlot({ sequence })] }), NOW).file, has, known),
    );
  const told = () =>
    /SEQUENCE:(\d+)/.exec(
      calendarOf(
        monthFileOf(readMonthState(doc), { ...FEED_STUDIO, zone: "UTC", rooms: {}, coaches: {}, plans: {} }),
        {},
      ),
    )?.[1];
  take(7);
  take(2 ** 31 - 1);
  expect(told()).toBe("8");
  // Kept by an earlier release of the program.
  doc.getMap("revisions").set("early", { n: 2 ** 31 + 5, at: NOW });
  const carry = keepRevisions(doc, () => known);
  changeSlot({ doc, origin: "ines" }, "early", { start: "08:00" });
  carry();
  expect(told()).toBe(String(2 ** 31 - 1));
});
