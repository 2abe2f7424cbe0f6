/** Laws of order keys: a total order, ties by id, and a place after any item, also when people chose the same key. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { byOrder, keyAfter, keyAtEnd, type Ordered } from "#lib/doc/order.ts";
import { often } from "#tests/support/long.ts";

const SEED = 7_041;
const check = (property: fc.IProperty<unknown[]>) =>
  fc.assert(property as fc.IProperty<unknown>, { seed: SEED, numRuns: often(100, 300) });

/** Lists as people make them: each inserts after something, and some do so at the same moment. */
const places = fc.array(fc.record({ after: fc.nat({ max: 50 }), at: fc.nat({ max: 3 }) }), { maxLength: 40 });
function grow(steps: readonly { after: number; at: number }[]): Ordered[] {
  let list: Ordered[] = [];
  steps.forEach(({ after, at }, i) => {
    const key = keyAfter(list, list[after % (list.length + 1)]?.id ?? null);
    // `at` people insert in the same place without knowing of each other, and get the same key.
    const twins = Array.from({ length: 1 + at }, (_, twin) => ({ id: `i${i}-${twin}`, order: key }));
    list = [...list, ...twins].sort(byOrder);
  });
  return list;
}
const anyItem = fc.record({ id: fc.string({ maxLength: 4 }), order: fc.string({ maxLength: 6 }) });

test("the order is total and does not depend on the order of the list", () => {
  check(
    fc.property(fc.array(anyItem, { maxLength: 12 }), (items) => {
      for (const a of items) {
        for (const b of items) {
          expect(Math.sign(byOrder(a, b))).toBe(0 - Math.sign(byOrder(b, a)));
          if (byOrder(a, b) === 0) expect(a).toEqual(b);
          for (const c of items)
            if (byOrder(a, b) <= 0 && byOrder(b, c) <= 0) expect(byOrder(a, c)).toBeLessThanOrEqual(0);
        }
      }
      expect([...items].reverse().sort(byOrder)).toEqual([...items].sort(byOrder));
    }),
  );
});

test("an item put after another comes after it and those with the same key, and before everything further down", () => {
  let twinsSeen = 0;
  check(
    fc.property(places, fc.nat({ max: 60 }), (steps, pick) => {
      const list = grow(steps);
      const target = list[pick % Math.max(1, list.length)];
      if (!target) return;
      const made = { id: "new", order: keyAfter(list, target.id) };
      const next = list.find((o) => o.order > target.order);
      expect(made.order > target.order).toBe(true);
      if (next) expect(made.order < next.order).toBe(true);
      if (list.filter((o) => o.order === target.order).length > 1) twinsSeen++;
    }),
  );
  expect(twinsSeen).toBeGreaterThan(50);
});

test("the top and the end are always free; a missing item counts as the end", () => {
  check(
    fc.property(places, (steps) => {
      const list = grow(steps);
      const [first, last] = [list[0], list.at(-1)];
      if (!first || !last) return;
      expect(keyAfter(list, null) < first.order).toBe(true);
      expect(keyAtEnd(list) > last.order).toBe(true);
      expect(keyAfter(list, "gone") > last.order).toBe(true);
    }),
  );
});

test("invalid keys never throw and still give a place after them", () => {
  check(
    fc.property(fc.array(anyItem, { minLength: 1, maxLength: 8 }), fc.nat({ max: 8 }), (items, pick) => {
      const list = items.map(({ order }, i) => ({ id: `i${i}`, order })).sort(byOrder);
      const target = list[pick % list.length];
      if (target) expect(keyAfter(list, target.id) > target.order || target.order === "").toBe(true);
      expect(() => keyAfter(list, null)).not.toThrow();
      expect(() => keyAtEnd(list)).not.toThrow();
    }),
  );
});

test("a thousand inserts in one place keep a strict order", () => {
  let list: Ordered[] = [];
  for (let i = 0; i < 1000; i++) list = [{ id: `i${i}`, order: keyAfter(list, null) }, ...list];
  for (let i = 1; i < list.length; i++) expect((list[i - 1]?.order ?? "") < (list[i]?.order ?? "")).toBe(true);
});
