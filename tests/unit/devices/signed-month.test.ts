/** What a device of a room gets of a month that was signed off and then changed. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { MonthSlot } from "#lib/month/types.ts";
import type { Device } from "#lib/policy/can.ts";
import { addSlot, changeSlot, takeOutSlot } from "#lib/programme/write.ts";
import { DocUnavailable, monthDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { readRoomCards } from "#server/devices/read-cards.ts";
import { monthSettings } from "#server/month-facts/month-settings.ts";
import { readMonthForSignOff } from "#server/month-sign/read-month.ts";
import { signMonth } from "#server/month-sign/sign-month.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { signedClass } from "#tests/support/signed-class.ts";

const MONTH = "2026-11";
let s: PlanStudio;
let planId: string;
const doc = monthDoc(MONTH);
const writer = (d: Parameters<typeof addSlot>[0]["doc"]) => ({ doc: d, origin: "marta" });
const add = (id: string, more: Partial<MonthSlot> = {}) =>
  s.app.documents.transact(doc, "marta", (d) => {
    const slot = { id, date: "2026-11-12", start: "18:00", minutes: 45, room: ROOMS.harbour, plan: planId, ...more };
    addSlot(writer(d), slot, s.app.now());
  });
const sign = () => {
  const { hash, nextEdition } = must(readMonthForSignOff(s.app, s.people.ines, MONTH));
  must(signMonth(s.app, s.people.ines, MONTH, { hash, edition: nextEdition }));
};
const device = (roomId: string): Device => ({ kind: "device", id: "d1", roomId });
const got = (roomId: string = ROOMS.harbour, app: Springline = s.app) => {
  const { cards, nextSlots, slotMarks } = must(readRoomCards(app, device(roomId)));
  return { cards: cards.map(({ card }) => card.edition.planId), nextSlots, slotMarks };
};

beforeEach(async () => {
  s = openStudio();
  monthSettings(s.app);
  planId = (await signedClass(s)).id;
});
afterEach(() => s.stop());

describe("after the month was signed", () => {
  test("a class as it was signed has no mark; one that moved says from when", () => {
    add("one");
    sign();
    expect(got()).toEqual({ cards: [planId], nextSlots: { [planId]: "2026-11-12T18:00" }, slotMarks: {} });
    s.app.documents.transact(doc, "marta", (d) => changeSlot(writer(d), "one", { start: "19:00" }));
    expect(got()).toMatchObject({
      nextSlots: { [planId]: "2026-11-12T19:00" },
      slotMarks: { [planId]: ["moved from 18:00"] },
    });
  });

  test("a class that was given another plan brings that card, marked; one that is called off brings none", () => {
    add("one", { room: ROOMS.loft, plan: null });
    sign();
    expect(got(ROOMS.loft).cards).toEqual([]);
    s.app.documents.transact(doc, "marta", (d) => changeSlot(writer(d), "one", { plan: planId }));
    expect(got(ROOMS.loft)).toMatchObject({ cards: [planId], slotMarks: { [planId]: ["other plan"] } });
    const now = { at: s.app.now(), signedAt: s.app.now() };
    s.app.documents.transact(doc, "marta", (d) => takeOutSlot(writer(d), "one", now));
    expect(got(ROOMS.loft)).toEqual({ cards: [], nextSlots: {}, slotMarks: {} });
  });

  test("a class that moved here from another room says so, and the other room has it no more", () => {
    add("one");
    sign();
    s.app.documents.transact(doc, "marta", (d) => changeSlot(writer(d), "one", { room: ROOMS.loft }));
    expect(got(ROOMS.loft)).toMatchObject({ cards: [planId], slotMarks: { [planId]: ["other room"] } });
    expect(got().nextSlots).toEqual({});
  });

  test("a month that cannot be read counts as it was signed", () => {
    add("one");
    sign();
    const withDoc = () => {
      throw new DocUnavailable("damaged", "it is damaged");
    };
    const app = { ...s.app, documents: { ...s.app.documents, withDoc } } as Springline;
    expect(got(ROOMS.harbour, app)).toMatchObject({ cards: [planId], nextSlots: { [planId]: "2026-11-12T18:00" } });
  });
});

test("before it is signed there are no marks", () => {
  add("one", { start: "19:00" });
  expect(got().slotMarks).toEqual({});
});
