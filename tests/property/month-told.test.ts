/**
 * What a calendar tells of a month over a random history of moves, holidays, replacements and signings over days: RFC 5545 §3.8.7.4 has a
 * reader go by SEQUENCE and by DTSTAMP, so neither may ever fall, and what is told may not change under the same pair.
 */
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { calendarOf } from "#lib/month/ics/feed.ts";
import { lastNearDay, promisedMonth } from "#lib/month/ics/promised.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { importMonth } from "#lib/programme/import-file.ts";
import { keepRevisions } from "#lib/programme/keep-revisions.ts";
import { monthFileOf, toldNumbers } from "#lib/programme/month-file.ts";
import { monthClasses, readMonthState } from "#lib/programme/read.ts";
import { addSlot, changeSlot, putBackSlot, takeOutSlot } from "#lib/programme/write.ts";
import { setHoliday } from "#lib/programme/write-lists.ts";
import { addLine } from "#lib/programme/write-pattern.ts";
import { FEED_STUDIO } from "#tests/support/feed-month.ts";
import { often } from "#tests/support/long.ts";
import { readByIcalJs } from "#tests/support/read-feed.ts";

const HOUR = 3_600_000;
const OF = { ...FEED_STUDIO, zone: "Europe/London", coaches: {}, plans: {}, rooms: {} };
const HAS = { room: () => true, coach: () => true, plan: () => true };
const day = (n: number) => dateOfDay(dayNumber("2026-12-01") + (n % 31));

const step = fc.record({
  act: fc.constantFrom("move", "move", "move", "out", "back", "coach", "add", "holiday", "open", "replace", "restore"),
  pick: fc.nat(40),
  // Near the first days or anywhere.
  to: fc.oneof(fc.nat(4), fc.nat(30)),
  hours: fc.constantFrom(1, 1, 5, 30, 100),
  signs: fc.boolean(),
});
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

class History {
  now = Date.UTC(2026, 10, 29, 8);
  signed: MonthFile | undefined;
  private signedAt: number | null = null;
  private kept: MonthFile | undefined;
  private readonly doc = createMonthDoc("2026-12");
  private readonly w = { doc: this.doc, origin: "ines" };
  private readonly carry = keepRevisions(this.doc, () => this.known());
  private made = 0;

  constructor() {
    addLine(this.w, { id: "early", days: [2, 5], start: "07:00", minutes: 45, coach: "marta" }, this.now);
    for (const n of [1, 2, 24]) this.add(n);
    this.carry();
  }
  get today(): string {
    return dateOfDay(Math.floor(this.now / (24 * HOUR)));
  }
  classes() {
    return monthClasses(readMonthState(this.doc));
  }
  get live(): MonthFile {
    return monthFileOf(readMonthState(this.doc), OF);
  }
  private known() {
    return { at: this.now, signedAt: this.signedAt, nearUntil: lastNearDay(this.today) };
  }
  private add(n: number) {
    addSlot(this.w, { id: `s${this.made++}`, date: day(n), start: "18:00", minutes: 45, coach: "marta" }, this.now);
  }

  take({ act, pick, to, hours, signs }: Step) {
    this.now += hours * HOUR;
    const classes = this.classes();
    const id = classes[pick % Math.max(1, classes.length)]?.id ?? "s0";
    if (act === "move") changeSlot(this.w, id, { date: day(to) });
    if (act === "out") takeOutSlot(this.w, id, this.known());
    if (act === "back") putBackSlot(this.w, id);
    if (act === "coach") changeSlot(this.w, id, { coach: pick % 2 ? "jonas" : "marta" });
    if (act === "add") this.add(to);
    if (act === "holiday" || act === "open") setHoliday(this.w, day(to), act === "open" ? null : "Closed");
    if (act === "replace") this.replace({ ...this.live, pattern: [], slots: this.live.slots.slice(0, 3) });
    if (act === "restore" && this.kept) this.replace(this.kept);
    this.carry();
    if (signs) this.sign();
  }
  private replace(file: MonthFile) {
    this.kept = this.live;
    this.doc.transact(() => importMonth(this.doc, file, HAS, this.known()));
  }
  private sign() {
    this.now += 1000;
    this.signedAt = this.now;
    this.signed = this.live;
  }

  told(): string {
    const numbers = toldNumbers(readMonthState(this.doc));
    const told = this.signed ? promisedMonth(this.signed, this.live, this.today, numbers) : this.live;
    return calendarOf(told, {});
  }
  /** The classes that stand on a near day, as they stand. */
  near(): string[] {
    return this.classes()
      .filter(({ date }) => date <= lastNearDay(this.today))
      .map(({ date, start, out }) => `${date}T${start} ${out ? "CANCELLED" : "CONFIRMED"}`);
  }
}

function holds(steps: readonly Step[]) {
  const history = new History();
  const seen = new Map<string, { sequence: number; stamp: string; said: string }>();
  let changedAt = "";
  for (const one of [undefined, ...steps]) {
    if (one) history.take(one);
    const feed = readByIcalJs(history.told());
    expect(feed.changedAt >= changedAt, "LAST-MODIFIED of the calendar").toBe(true);
    changedAt = feed.changedAt;
    for (const { uid, sequence, stamp, wall, status, description } of feed.events) {
      const said = [wall, status, description].join(" ");
      const was = seen.get(uid);
      const later = !was || sequence > was.sequence || (sequence === was.sequence && stamp >= was.stamp);
      expect(later && (!was || stamp >= was.stamp), `${uid}: ${JSON.stringify([was, sequence, stamp])}`).toBe(true);
      if (was && was.said !== said)
        expect([sequence, stamp], `${was.said} -> ${said}`).not.toEqual([was.sequence, was.stamp]);
      seen.set(uid, { sequence, stamp, said });
    }
    const told = feed.events.map(({ wall, status }) => `${wall} ${status}`);
    expect(told).toEqual(expect.arrayContaining(history.near()));
  }
}

test("numbers and stamps never fall, and what is near is told as it stands", () => {
  fc.assert(fc.property(fc.array(step, { minLength: 3, maxLength: 25 }), holds), { numRuns: often(20, 60) });
});

test("a class that comes near and goes away again keeps its number", () => {
  const history = new History();
  const one = { pick: 0, to: 1, hours: 1 } as const;
  history.take({ ...one, act: "open", signs: true });
  const numberOf = (id: string) => history.live.slots.find((slot) => slot.id === id)?.sequence ?? 0;
  const far = history.classes().findIndex(({ id }) => id === "s2");
  history.take({ ...one, act: "move", pick: far, signs: false });
  const near = history.classes().findIndex(({ id }) => id === "s2");
  history.take({ ...one, act: "move", pick: near, to: 24, signs: false });
  expect(numberOf("s2")).toBe(2);
  expect(history.told()).toContain("SEQUENCE:2\r\nDTSTART;TZID=Europe/London:20261225T180000");
});
