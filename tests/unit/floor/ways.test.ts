/** The ways to end on time, times worked by hand; and for any late class a way does what it says. */
import { describe, expect, test } from "vitest";
import { buildCard, type Card } from "#lib/card/card.ts";
import { actEvent, endOnTimeAt, retimeEvent } from "#lib/floor/acts.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { floorNow, floorView, latenessAt, positionAt } from "#lib/floor/now.ts";
import { undoableAt } from "#lib/floor/undo.ts";
import { LEAST_CLOSING, wayEvent, waysAt } from "#lib/floor/ways.ts";
import { headSeconds, moveItems, moveOf, sidePairs } from "#lib/plan/lookup.ts";
import { Dice } from "#tests/support/dice.ts";
import { samplePlan } from "../card/sample-plan.ts";

const cardWith = (closingSeconds: number): Card =>
  buildCard({
    studio: { name: "Tholepin Strength", town: "Port Ellery" },
    planId: "rows",
    number: 1,
    room: { id: "harbour", name: "Harbour room" },
    plan: { ...samplePlan(), closingSeconds },
    issuedAt: 0,
    expiresAt: 86_400_000,
  });
const T0 = 1_000_000;
const at = (seconds: number) => T0 + seconds * 1000;
/** Held from `from` for `seconds`. */
const heldFor = (from: number, seconds: number): FloorLog => [
  { type: "start", at: T0 },
  { type: "hold", at: at(from) },
  { type: "resume", at: at(from + seconds) },
];

// Opening 0-30, pike 30-90, pause 90-110, change 110-130, left 130-175, change 175-180, right 180-225, closing from 225.
describe("ways to end on time", () => {
  test("40 s late with a closing of 90 s: new times, or a closing of 50 s", () => {
    const card = cardWith(90);
    const log = heldFor(10, 40);
    const { ways, say } = waysAt(card, log, at(60));
    expect(say).toBe("");
    expect(ways.map(({ id, ends }) => [id, ends])).toEqual([
      ["rest", "Ends on time."],
      ["closing", "Ends on time."],
    ]);
    expect(ways[1]).toMatchObject({ rows: [{ from: 90, to: 50 }], sentences: ["The closing gets 40 s less."] });
    const taken = wayEvent(card, log, "closing", at(60));
    if (!taken) throw new Error("it is there");
    const after = [...log, taken];
    expect(latenessAt(card, after, at(60))).toBeCloseTo(0);
    // The work is unchanged.
    expect(moveItems(floorNow(card, after).plan)).toEqual(moveItems(card.plan));
    expect(floorView(card, after, at(314)).phase).toBe("closing");
    expect(floorView(card, after, at(315)).phase).toBe("done");
    expect(undoableAt(card, after, at(61))).toMatchObject({ what: "end on time", did: "The closing gets 50 s." });
    const undone = [...after, actEvent(card, after, "undo", at(65))];
    expect(latenessAt(card, undone, at(65))).toBeCloseTo(40);
  });

  test("a closing of 40 s can give 10 s: says that 30 s are still late", () => {
    const card = cardWith(40);
    const { ways } = waysAt(card, heldFor(10, 40), at(60));
    expect(ways.map(({ id, ends }) => [id, ends])).toEqual([
      ["rest", "Ends on time."],
      ["closing", "Still ends 0:30 late."],
    ]);
    expect(ways[1]?.rows).toMatchObject([{ from: 40, to: LEAST_CLOSING }]);
  });

  test("a closing planned at its least or shorter gives nothing and is not offered", () => {
    for (const closing of [30, 12]) {
      expect(waysAt(cardWith(closing), heldFor(10, 40), at(60)).ways.map(({ id }) => id)).toEqual(["rest"]);
    }
  });

  test("during the last side only the closing can change", () => {
    const card = cardWith(90);
    // Thirty-five late, ten seconds before the closing.
    const { ways, say } = waysAt(card, heldFor(215, 35), at(250));
    expect(ways.map(({ id }) => id)).toEqual(["closing"]);
    expect([say, ways[0]?.ends]).toEqual(["", "Ends on time."]);
  });

  test("if neither is enough it offers both together and says how late that ends", () => {
    const card = cardWith(90);
    const log = heldFor(200, 100);
    const { ways, say } = waysAt(card, log, at(300));
    expect(ways.map(({ id }) => id)).toEqual(["both", "closing"]);
    const best = ways[0];
    // The right side goes on: 20 of 45 s done. Closing 90 to 30 gives 60 of 100.
    expect(ways[1]).toMatchObject({ ends: "Still ends 0:40 late." });
    expect(best?.lateBy).toBeGreaterThan(0);
    expect(best?.lateBy).toBeLessThanOrEqual(40);
    expect(say).toMatch(/^The class cannot end on time any more\. At best it ends 0:\d\d late\.$/);
  });

  test("a class on time has no ways; an early one gets a longer closing", () => {
    const card = cardWith(90);
    expect(waysAt(card, [{ type: "start", at: T0 }], at(60))).toEqual({
      ways: [],
      say: "Nothing to change: the class ends on time.",
    });
    const early: FloorLog = [
      { type: "start", at: T0 },
      { type: "next", at: at(95), to: 110 },
    ];
    const closing = waysAt(card, early, at(100)).ways.find(({ id }) => id === "closing");
    expect(closing).toMatchObject({ ends: "Ends on time.", rows: [{ from: 90, to: 105 }] });
  });

  test("says when nothing left can be shortened", () => {
    const card = cardWith(20);
    expect(waysAt(card, heldFor(230, 60), at(292))).toEqual({
      ways: [],
      say: "Nothing left can be shortened: the class ends 1:00 late.",
    });
  });
});

test("for any late class a way does what it says, keeps sides alike where possible and the closing at its least or longer", () => {
  const dice = new Dice(77);
  const seen = { rest: 0, closing: 0, both: 0 };
  for (let run = 0; run < 150; run++) {
    const card = cardWith(dice.upTo(150));
    const [from, seconds] = [dice.upTo(260), dice.upTo(240)];
    const log = heldFor(from, seconds);
    const now = at(from + seconds + dice.upTo(30));
    if (floorView(card, log, now).phase === "done") continue;
    const { plan } = floorNow(card, log);
    const { position } = positionAt(card, log, now);
    const rest = endOnTimeAt(card, log, now);
    for (const way of waysAt(card, log, now).ways) {
      seen[way.id]++;
      const say = `run ${run}, ${way.id}`;
      const after = [...log, retimeEvent(way.answer, now)];
      expect(positionAt(card, after, now).position, say).toBeCloseTo(position, 9);
      expect(Math.abs(Math.max(0, latenessAt(card, after, now)) - way.lateBy), say).toBeLessThan(0.01);
      const closing = headSeconds(floorNow(card, after).plan, "closingSeconds");
      const least = Math.min(LEAST_CLOSING, headSeconds(plan, "closingSeconds"));
      expect(closing, say).toBeGreaterThanOrEqual(least - 0.1);
      if (way.id === "rest") expect(rest.possible, say).toBe(true);
      if (way.id === "both" && !rest.possible) expect(way.lateBy, say).toBeLessThan(rest.overBy + 1);
      const is = floorNow(card, after).plan;
      for (const item of moveItems(is)) {
        const was = moveItems(plan).find(({ id }) => id === item.id);
        const shortest = (item.range ?? moveOf(is, item)?.seconds ?? [0])[0];
        if (item.seconds < (was?.seconds ?? 0)) expect(item.seconds, say).toBeGreaterThanOrEqual(shortest);
      }
      for (const { left, right } of sidePairs(is)) {
        const uneven = left && right && left.seconds !== right.seconds;
        if (uneven) expect([...way.answer.uneven], say).toEqual(expect.arrayContaining([right.id]));
      }
    }
  }
  expect(Math.min(seen.rest, seen.closing, seen.both)).toBeGreaterThan(5);
});
