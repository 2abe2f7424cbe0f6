/** A room's week for the wall beside the signed month, written out by hand. 6 April 2026 is a Monday (ISO 8601, week 15). */
import { describe, expect, test } from "vitest";
import { slotChanges } from "#lib/month/changes/slot-changes.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { wallLines } from "#lib/tide/wall-lines.ts";
import { smallMonth, smallSlot } from "#tests/support/small-month.ts";

const month = (slots: readonly MonthSlot[]) =>
  smallMonth({
    rooms: {
      loft: { name: "Loft", machines: 8, equipment: "long-rail" },
      harbour: { name: "Harbour room", machines: 8, equipment: "long-rail" },
    },
    coaches: { marta: { name: "Marta Reis", roles: ["coach"] }, jonas: { name: "Jonas", roles: ["coach"] } },
    slots: [...slots],
  });
const one = smallSlot("one");

/** "Loft: 10:00 (moved from 09:00)"; a class that is gone from there in brackets. */
function shown(was: readonly MonthSlot[], now: readonly MonthSlot[], room = "loft"): string[] {
  const [signed, file] = [month(was), month(now)];
  return wallLines({ month: file, slots: now, changes: slotChanges(signed, file) }, room).map((line) => {
    const words = `${line.date.slice(8)} ${line.start}${line.since === null ? "" : ` ${line.since}`}`;
    return line.gone ? `[${words}]` : words;
  });
}

describe("a room's week", () => {
  test("a class as it was signed has no words; the coach's name and title stand on it", () => {
    expect(shown([one], [one])).toEqual(["06 10:00"]);
    expect(wallLines({ month: month([one]), slots: [one], changes: [] }, "loft")).toEqual([
      {
        ...{ id: "one", date: "2026-04-06", start: "10:00", minutes: 45, title: "Arms, chest", coach: "Marta Reis" },
        ...{ gone: false, since: null },
      },
    ]);
  });

  test("one that begins at another time of its day is there once, with its old time", () => {
    expect(shown([one], [{ ...one, start: "18:00" }])).toEqual(["06 18:00 moved from 10:00"]);
  });

  test("one of another day is there, and crossed out where it was", () => {
    expect(shown([one], [{ ...one, date: "2026-04-09" }])).toEqual([
      "[06 10:00 now Thu 9 Apr 10:00]",
      "09 10:00 moved from Mon 6 Apr 10:00",
    ]);
  });

  test("one in another room is crossed out here, with the way there, and marked there", () => {
    const there = { ...one, room: "harbour", start: "11:00" };
    expect(shown([one], [there])).toEqual(["[06 10:00 now in Harbour room, Mon 6 Apr 11:00]"]);
    expect(shown([one], [{ ...one, room: "harbour" }])).toEqual(["[06 10:00 now in Harbour room]"]);
    expect(shown([one], [there], "harbour")).toEqual(["06 11:00 moved from 10:00 and other room"]);
    expect(shown([one], [{ ...one, room: null }])).toEqual(["[06 10:00 now without a room]"]);
  });

  test("called off and gone are crossed out; new, on again, another coach and plan are said", () => {
    const out = { ...one, out: true };
    expect(shown([one], [out])).toEqual(["[06 10:00 called off]"]);
    expect(shown([one], [])).toEqual(["[06 10:00 called off]"]);
    expect(shown([out], [one])).toEqual(["06 10:00 on again"]);
    expect(shown([], [one])).toEqual(["06 10:00 new"]);
    expect(shown([one], [{ ...one, coach: "jonas", plan: null }])).toEqual(["06 10:00 other coach and other plan"]);
  });

  test("what was called off when it was signed was nobody's, and small things are not said", () => {
    expect(shown([{ ...one, out: true }], [{ ...one, out: true, room: "harbour" }])).toEqual([]);
    expect(shown([one], [{ ...one, people: 7 }])).toEqual(["06 10:00"]);
  });
});
