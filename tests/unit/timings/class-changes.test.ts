/** Which changes of a class show how long they took: from the floor's own events, worked by hand. */
import { describe, expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { actEvent, endOnTimeAt, type PlainAct, retimeEvent } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import { type ClassLog, classLogSchema } from "#lib/floor/class-log-schema.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { classChanges } from "#lib/timings/class-changes.ts";
import { studioSeconds } from "#lib/timings/studio-seconds.ts";
import { samplePlan } from "../card/sample-plan.ts";

// Opening 0-30, pike 30-90, change 90-110, row left 110-155, change 155-160, row right 160-205, closing 205-245.
const noPause = (): Plan => ({ ...samplePlan(), items: samplePlan().items.filter(({ id }) => id !== "rest") });
const cardOf = (plan: Plan) =>
  buildCard({
    studio: { name: "Tholepin Strength", town: "Port Ellery" },
    planId: "rows",
    number: 1,
    room: { id: "harbour", name: "Harbour room" },
    plan,
    issuedAt: 0,
    expiresAt: 86_400_000,
  });
const card = cardOf(noPause());
const of = { sessionId: "a".repeat(32), kind: "class", clock: { mono: 0, wall: Date.UTC(2026, 4, 4, 18) } } as const;

/** What a coach touched, and when, seconds from the start; then the class to its end. */
function taught(
  touches: readonly (readonly [PlainAct, number])[],
  of_ = card,
  kind: ClassLog["kind"] = "class",
): ClassLog {
  let log: FloorLog = [{ type: "start", at: 0 }];
  for (const [act, seconds] of touches) log = [...log, actEvent(of_, log, act, seconds * 1000)];
  const made = classLogUntil(of_, log, 3_600_000, { ...of, kind });
  if (!made) throw new Error("the class has begun");
  return classLogSchema.parse(made);
}
// Bars to one handle, plank to kneeling, platform to carriage under the feet, front to back, light off, heavy on.
const INTO_LEFT = {
  springOn: 1,
  springOff: 1,
  carriageHome: 1,
  quarterTurn: 2,
  positionChange: 1,
  handleUp: 1,
};
const OTHER_HAND = { handleUp: 1, handleDown: 1 };

describe("a change shows how long it took", () => {
  test("not when the class ran by the clock", () => {
    expect(classChanges(card, taught([]))).toEqual([]);
  });

  test("when next was pressed in it: people were ready", () => {
    expect(classChanges(card, taught([["next", 104]]))).toEqual([{ actions: INTO_LEFT, seconds: 14 }]);
  });

  test("when it was held: they were not, until the work began", () => {
    const held = taught([
      ["hold", 100],
      ["resume", 108],
    ]);
    expect(classChanges(card, held)).toEqual([{ actions: INTO_LEFT, seconds: 28 }]);
    const passed = taught([
      ["hold", 100],
      ["resume", 108],
      ["next", 110],
    ]);
    expect(classChanges(card, passed)).toEqual([{ actions: INTO_LEFT, seconds: 20 }]);
  });

  test("when the work was held right at its start, until it went on; a later hold is about something else", () => {
    const late = taught([
      ["hold", 162],
      ["resume", 169],
    ]);
    expect(classChanges(card, late)).toEqual([{ actions: OTHER_HAND, seconds: 14 }]); // change 5, 2 into it, 7 held
    expect(
      classChanges(
        card,
        taught([
          ["hold", 170],
          ["resume", 190],
        ]),
      ),
    ).toEqual([]);
  });

  test("not by a slip of the finger", () => {
    expect(
      classChanges(
        card,
        taught([
          ["hold", 100],
          ["resume", 101],
        ]),
      ),
    ).toEqual([]);
    expect(classChanges(card, taught([["next", 109.8]]))).toEqual([]);
  });

  test("not when the work before or after it was skipped, repeated or never reached", () => {
    expect(
      classChanges(
        card,
        taught([
          ["next", 104],
          ["next", 106],
        ]),
      ),
      "the left side passed by",
    ).toEqual([]);
    expect(
      classChanges(
        card,
        taught([
          ["next", 32],
          ["next", 40],
        ]),
      ),
      "the plank passed by",
    ).toEqual([]);
    expect(
      classChanges(
        card,
        taught([
          ["next", 104],
          ["back", 150],
        ]),
      ),
      "the left side again",
    ).toEqual([]);
    expect(
      classChanges(
        card,
        taught([
          ["next", 104],
          ["end", 106],
        ]),
      ),
      "ended there",
    ).toEqual([]);
  });

  test("not after a pause, in which people may have set up already", () => {
    const withPause = cardOf(samplePlan()); // Change into the left side 110-130.
    expect(classChanges(withPause, taught([["next", 120]], withPause))).toEqual([]);
    // The change after the next move counts again: 175-180.
    const other = taught(
      [
        ["hold", 177],
        ["resume", 180],
      ],
      withPause,
    );
    expect(classChanges(withPause, other)).toEqual([{ actions: OTHER_HAND, seconds: 8 }]);
  });

  test("counted from the move that was really done before, when some were left out", () => {
    const log: FloorLog = [{ type: "start", at: 0 }];
    const drop = { type: "retime", at: 40_000, changed: [], dropped: ["row-left"], closingSeconds: 40 } as const;
    const late: FloorLog = [...log, drop];
    const told = classLogUntil(card, [...late, actEvent(card, late, "next", 97_000)], 3_600_000, of);
    // Without the left side nothing was planned for the change from the plank to the right side: an estimate counts.
    expect(told && classChanges(card, told)).toEqual([{ actions: INTO_LEFT, seconds: 7 }]);
  });

  test("also in a class that was re-timed to end on time", () => {
    let log: FloorLog = [
      { type: "start", at: 0 },
      { type: "hold", at: 100_000 },
      { type: "resume", at: 106_000 },
    ];
    const answer = endOnTimeAt(card, log, 112_000);
    expect(answer.possible).toBe(true);
    if (answer.possible) log = [...log, retimeEvent(answer, 112_000)];
    const told = classLogUntil(card, log, 3_600_000, of);
    expect(told && classChanges(card, told)).toEqual([{ actions: INTO_LEFT, seconds: 26 }]);
  });

  test("not in a rehearsal, with no people to wait for", () => {
    expect(classChanges(card, taught([["next", 104]], card, "rehearsal"))).toEqual([]);
  });
});

describe("a log that the floor did not write is ignored", () => {
  const good = taught([
    ["hold", 100],
    ["resume", 108],
    ["hold", 170],
    ["resume", 177],
  ]);
  const usual = studioSeconds([]).rows;
  const altered = (change: (row: ClassLog["rows"][number]) => object, more: Partial<ClassLog> = {}): ClassLog => ({
    ...good,
    ...more,
    rows: good.rows.map((row) => (row.phase === "change" ? { ...row, ...change(row) } : row)),
  });

  test.each<[string, ClassLog]>([
    ["less than nothing", altered(() => ({ held: -40 }))],
    ["not a number", altered(() => ({ took: Number.NaN }))],
    ["hours in one change", { ...altered(() => ({ held: 7200 })), elapsed: good.elapsed + 14_400 - 8 }],
    ["seconds that do not add up", altered(() => ({ held: 30 }))],
    ["another plan's seconds", altered(({ planned }) => ({ planned: planned + 3 }))],
    ["items of another class", altered(() => ({ item: "nobody" }))],
    ["one change a hundred times", { ...good, rows: [...good.rows, ...Array(100).fill(good.rows[2])] }],
    [
      "a start later than what was held",
      { ...good, rows: good.rows.map((r) => (r.lateStart ? { ...r, lateStart: 600 } : r)) },
    ],
  ])("%s", (_, log) => {
    expect(studioSeconds(classChanges(card, log)).rows.map(({ seconds }) => seconds)).toEqual(
      usual.map(({ seconds }) => seconds),
    );
  });

  test("the good one does", () => {
    expect(classChanges(card, good)).toHaveLength(2);
    expect(studioSeconds(classChanges(card, good)).rows).not.toEqual(usual);
  });
});

describe("of a room full of people", () => {
  test("the seconds are divided by the factor of its slowest: what is left is one person's", () => {
    const plan = noPause();
    const crowd = (people: number, spreadShare?: number) =>
      cardOf({
        ...plan,
        people,
        equipment: { ...plan.equipment, ...(spreadShare === undefined ? {} : { spreadShare }) },
      });
    const secondsOf = (full: ReturnType<typeof cardOf>) =>
      classChanges(full, taught([["next", 104]], full))[0]?.seconds;
    expect(secondsOf(crowd(1))).toBe(14);
    // 1 + 0.15 x 1.53875 = 1.2308, and 1 + 0.3 x 1.53875 = 1.4616
    expect(secondsOf(crowd(10))).toBeCloseTo(14 / 1.230813, 5);
    expect(secondsOf(crowd(10, 0.3))).toBeCloseTo(14 / 1.461626, 5);
    expect(secondsOf(crowd(10, 0))).toBe(14);
  });
});
