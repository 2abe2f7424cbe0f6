/** What is told of a month's changes explains exactly them: put on the month before, it gives the month after. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { changeMarks, changeSentence } from "#lib/month/changes/change-words.ts";
import { monthChanges } from "#lib/month/changes/month-changes.ts";
import { type ChangedPart, type ChangedSlot, SLOT_PARTS, slotChanges } from "#lib/month/changes/slot-changes.ts";
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { busyMonth } from "../support/busy-month.ts";
import { Dice } from "../support/dice.ts";
import { often } from "../support/long.ts";

const SIZES = { coaches: 5, slots: 40, plans: 8 };

/** Random acts on a month, the pattern's own occurrences included: each as the editor would write it, without the editor. */
function edited(month: MonthFile, dice: Dice, acts: number): MonthFile {
  let slots = [...month.slots];
  for (let i = 0; i < acts; i++) {
    const all = expandMonth({ ...month, slots });
    const chosen = dice.one(all);
    const put = (slot: MonthSlot) => {
      slots = [...slots.filter(({ id }) => id !== slot.id), slot];
    };
    const day = dateOfDay(dayNumber("2026-03-01") + dice.upTo(31));
    const does: (() => void)[] = [
      () => put({ ...chosen, date: day }),
      () => put({ ...chosen, start: dice.one(["06:00", "12:30", "21:00"]) }),
      () => put({ ...chosen, minutes: 30 + 5 * dice.upTo(8) }),
      () => put({ ...chosen, out: !chosen.out }),
      () => put({ ...chosen, room: dice.one([null, "room-1", "room-2"]) }),
      () => put({ ...chosen, coach: dice.one([null, "coach-0", "coach-3"]) }),
      () => put({ ...chosen, plan: dice.one([null, "plan-0", "plan-5"]) }),
      () => put({ ...chosen, regulars: dice.one([[], ["group-1"], ["group-2", "group-1"]]) }),
      () => put({ ...chosen, theme: dice.one([null, "theme-1"]) }),
      () => put({ ...chosen, note: dice.one(["", "Bring the long straps"]), locked: dice.upTo(2) === 0 }),
      () => put({ ...chosen, people: 3 + dice.upTo(5), changedAt: "2026-02-25T10:00:00Z", sequence: 3 }),
      () => put({ id: `added-${i}`, date: day, start: "08:00", minutes: 45 }),
      () => {
        slots = slots.filter(({ id }) => id !== chosen.id);
      },
    ];
    dice.one(does)();
  }
  return { ...month, slots };
}

/** A class as far as it counts; nothing where it does not take place. */
const told = (slot: MonthSlot): [string, unknown] => {
  const { id, date, start, minutes, room, coach, plan, theme, regulars, people, note, locked } = slot;
  const names = { room: room ?? null, coach: coach ?? null, plan: plan ?? null, theme: theme ?? null };
  const rest = { regulars: [...(regulars ?? [])].sort(), people: people ?? null, note: note ?? "" };
  return [id, { date, start, minutes, ...names, ...rest, locked: locked ?? false }];
};
const onIn = (month: MonthFile) =>
  new Map(
    expandMonth(month)
      .filter(({ out }) => !out)
      .map(told),
  );

const KEYS: Readonly<Record<ChangedPart, readonly (keyof MonthSlot)[]>> = {
  ...(Object.fromEntries(SLOT_PARTS.map((part) => [part, [part]])) as unknown as Record<
    ChangedPart,
    (keyof MonthSlot)[]
  >),
  moved: ["date", "start"],
};

/** The classes before, with nothing but what the list says put on them. */
function applied(was: MonthFile, changes: readonly ChangedSlot[]): Map<string, unknown> {
  const slots = new Map(expandMonth(was).map((slot) => [slot.id, slot]));
  for (const { id, kind, parts, now } of changes) {
    const before = slots.get(id);
    if (kind === "called-off") slots.delete(id);
    else if (kind === "new") slots.set(id, now as MonthSlot);
    else if (before && now) {
      const values = Object.fromEntries(parts.flatMap((part) => KEYS[part]).map((key) => [key, now[key]]));
      slots.set(id, { ...before, out: false, ...values });
    }
  }
  return new Map([...slots.values()].filter(({ out }) => !out).map(told));
}

describe("changes of a month", () => {
  test("explain exactly what random edits did, and no class is told of that is the same", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 0, max: 12 }), (seed, acts) => {
        const was = busyMonth(SIZES, (seed % 20) + 1);
        const now = edited(was, new Dice(seed), acts);
        const changes = slotChanges(was, now);
        expect(applied(was, changes)).toEqual(onIn(now));
        const [before, after] = [onIn(was), onIn(now)];
        const differing = [...new Set([...before.keys(), ...after.keys()])].filter(
          (id) => JSON.stringify(before.get(id)) !== JSON.stringify(after.get(id)),
        );
        expect(changes.map(({ id }) => id).sort()).toEqual(differing.sort());
      }),
      { seed: 7, numRuns: often(150, 3000) },
    );
  });

  test("are a sentence each, and there is a sentence whenever two files differ at all", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const was = busyMonth(SIZES, 3);
        const now = edited(was, new Dice(seed), 4);
        for (const change of slotChanges(was, now)) {
          expect(changeSentence(change, { was, now })).toMatch(
            /^(New: |Called off: |On again: )?[A-Z][a-z]{2} \d.*\.$/,
          );
          if (change.kind !== "changed") expect(changeMarks(change)).not.toEqual([]);
        }
        expect(monthChanges(was, now).length > 0).toBe(JSON.stringify(was) !== JSON.stringify(now));
        expect(monthChanges(was, structuredClone(was))).toEqual([]);
      }),
      { seed: 8, numRuns: often(100, 1000) },
    );
  });

  test("backwards are the same classes", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const was = busyMonth(SIZES, 5);
        const now = edited(was, new Dice(seed), 6);
        const ids = (changes: readonly ChangedSlot[]) => changes.map(({ id }) => id).sort();
        expect(ids(slotChanges(now, was))).toEqual(ids(slotChanges(was, now)));
      }),
      { seed: 9, numRuns: often(60, 500) },
    );
  });
});
