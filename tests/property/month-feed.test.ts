/** Any month's calendar: two independent readers find every class in it, at the instant that we count from. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { dateOfDay, dayNumber, minuteOfDay } from "#lib/calendar/days.ts";
import { momentOf } from "#lib/calendar/zone.ts";
import { expandMonth } from "#lib/month/expand.ts";
import type { CalendarOf } from "#lib/month/ics/events.ts";
import { calendarOf } from "#lib/month/ics/feed.ts";
import type { MonthFile, MonthSlot, PatternLine } from "#lib/month/types.ts";
import { feedMonth } from "#tests/support/feed-month.ts";
import { often } from "#tests/support/long.ts";
import { readByIcalJs, readByNodeIcal } from "#tests/support/read-feed.ts";

const ZONES = ["Europe/Lisbon", "America/New_York", "Australia/Sydney", "Asia/Kolkata", "Australia/Lord_Howe", "UTC"];
const FIRST = dayNumber("2024-01-01");
const words = fc.string({ unit: "grapheme", maxLength: 120 });
const start = fc
  .tuple(fc.nat(23), fc.nat(59))
  .map(([hour, minute]) => `${String(hour).padStart(2, "0")}:${String(minute).padStart(2, "0")}`);
const coach = fc.option(fc.constantFrom("marta", "jonas"), { freq: 4 });
const room = fc.option(fc.constantFrom("harbour", "loft"), { freq: 4 });
const theme = fc.option(fc.constant("upper"));
const values = fc.record({ start, minutes: fc.integer({ min: 5, max: 480 }), coach, room, theme });
const instant = fc
  .nat(86_400 * 365)
  .map((s) => new Date(1_767_225_600_000 + s * 1000).toISOString().replace(".000Z", "Z"));

const slotOf = (date: string, id: string): fc.Arbitrary<MonthSlot> =>
  fc
    .tuple(
      values,
      fc.record(
        {
          out: fc.boolean(),
          changedAt: instant,
          sequence: fc.nat(9),
          formerCoaches: fc.uniqueArray(fc.constantFrom("marta", "jonas")),
          formerRooms: fc.uniqueArray(fc.constantFrom("harbour", "loft")),
        },
        { requiredKeys: [] },
      ),
    )
    .map(([slot, more]) => ({ ...slot, ...more, id, date }));

const line = fc
  .tuple(values, fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 }), fc.integer({ min: 1, max: 3 }))
  .map(([slot, days, every]): Omit<PatternLine, "id"> => ({ ...slot, days, every }));

const months: fc.Arbitrary<MonthFile> = fc
  .tuple(fc.nat(1500), fc.integer({ min: 0, max: 61 }), fc.constantFrom(...ZONES))
  .chain(([day, length, zone]) => {
    const dates = { from: dateOfDay(FIRST + day), to: dateOfDay(FIRST + day + length) };
    const slots = fc
      .array(fc.nat(length), { maxLength: 12 })
      .chain((days) => fc.tuple(...days.map((d, i) => slotOf(dateOfDay(FIRST + day + d), `slot-${i}`))));
    const lines = fc.array(line, { maxLength: 3 });
    return fc
      .record({ title: words, name: words, theme: words, coach: words, changedAt: instant, slots, lines })
      .map((made) =>
        feedMonth({
          title: made.title,
          zone,
          dates,
          changedAt: made.changedAt,
          slots: made.slots,
          pattern: made.lines.map((one, i) => ({ ...one, id: `line-${i}` })),
          themes: { upper: { name: made.theme } },
          rooms: {
            harbour: { name: made.name, machines: 8, equipment: "long-rail" },
            loft: { name: "Loft", machines: 6, equipment: "long-rail" },
          },
          coaches: { marta: { name: made.coach, roles: ["coach"] }, jonas: { name: "Jonas", roles: ["coach"] } },
        }),
      );
  });

/** Readers disagree about times that the clock skips or shows twice: RFC 5545 §3.3.5 is checked in the reference tests. */
const plain = (month: MonthFile): MonthFile => ({
  ...month,
  slots: month.slots.filter((slot) => kindOf(month, slot) === "once"),
});
const wallOf = (slot: MonthSlot) => dayNumber(slot.date) * 86_400_000 + minuteOfDay(slot.start) * 60_000;
const kindOf = ({ zone }: MonthFile, slot: MonthSlot) => momentOf(wallOf(slot), zone).kind;

interface Wanted {
  readonly from: string;
  readonly to: string;
  readonly status: string;
}
function wantedOf(month: MonthFile, { coach, room }: CalendarOf): Wanted[] {
  const told = expandMonth(month).flatMap((slot) => {
    const [now, former] = coach ? [slot.coach, slot.formerCoaches] : [slot.room, slot.formerRooms];
    const asked = coach ?? room;
    if (asked !== undefined && now !== asked && !former?.includes(asked)) return [];
    const from = momentOf(wallOf(slot), month.zone).at;
    const on = slot.out !== true && (asked === undefined || now === asked);
    return [{ from, to: from + slot.minutes * 60_000, status: on ? "CONFIRMED" : "CANCELLED" }];
  });
  const iso = (at: number) => new Date(at).toISOString().replace(".000Z", "Z");
  return told.map((one) => ({ ...one, from: iso(one.from), to: iso(one.to) })).sort(inOrder);
}
const inOrder = (a: Wanted, b: Wanted) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1);
const facts = (read: readonly Wanted[]) => read.map(({ from, to, status }) => ({ from, to, status })).sort(inOrder);

const asks: fc.Arbitrary<CalendarOf> = fc.constantFrom<CalendarOf>({}, { coach: "marta" }, { room: "loft" });

test("two readers find every class, at our instants", () => {
  fc.assert(
    fc.property(months.map(plain), asks, (month, of) => {
      fc.pre(expandMonth(month).every((slot) => kindOf(month, slot) === "once"));
      const feed = calendarOf(month, of);
      const wanted = wantedOf(month, of);
      expect(facts(readByIcalJs(feed).events)).toEqual(wanted);
      expect(facts(readByNodeIcal(feed))).toEqual(wanted);
    }),
    { numRuns: often(30, 2000) },
  );
}, 120_000);

test("every line is at most 75 octets, whole characters, and ends in CRLF", () => {
  fc.assert(
    fc.property(months, asks, (month, of) => {
      const feed = calendarOf(month, of);
      expect(feed.endsWith("END:VCALENDAR\r\n")).toBe(true);
      for (const one of feed.split("\r\n")) {
        expect(Buffer.byteLength(one)).toBeLessThanOrEqual(75);
        expect(one).not.toMatch(/[\r\n]/);
        expect(Buffer.from(one, "utf8").toString()).toBe(one);
      }
      expect(calendarOf(structuredClone(month), of)).toBe(feed);
    }),
    { numRuns: often(30, 2000) },
  );
}, 120_000);

test("events are in order of their instants, each once", () => {
  fc.assert(
    fc.property(months, (month) => {
      const feed = calendarOf(month, {});
      const uids = [...feed.replaceAll("\r\n ", "").matchAll(/^BEGIN:VEVENT\r\nUID:(.*)\r$/gm)].map(([, uid]) => uid);
      expect(new Set(uids).size).toBe(uids.length);
      expect(uids).toHaveLength(expandMonth(month).length);
    }),
    { numRuns: often(20, 1000) },
  );
}, 120_000);
