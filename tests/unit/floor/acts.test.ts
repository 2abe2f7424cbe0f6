/** What a coach does: more seconds, End on time with its preview, undo; and the keys for these. */
import { describe, expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { actEvent, endOnTimeAt, retimeEvent } from "#lib/floor/acts.ts";
import { extension } from "#lib/floor/extension.ts";
import { actOfKey, keysOfAct, SAME_TAP_MS, steadyTaps, withKey } from "#lib/floor/keys.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { floorNow, floorView, latenessAt, positionAt } from "#lib/floor/now.ts";
import { previewOf } from "#lib/floor/preview.ts";
import { latenessSentence } from "#lib/floor/time-words.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { samplePlan } from "../card/sample-plan.ts";

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
const card = cardOf(samplePlan());
const T0 = 1_000_000;
const at = (seconds: number) => T0 + seconds * 1000;
const started: FloorLog = [{ type: "start", at: T0 }];
/** Held for forty seconds from 10 s on. */
const late: FloorLog = [...started, { type: "hold", at: at(10) }, { type: "resume", at: at(50) }];

describe("acts (times worked by hand)", () => {
  // Opening 0-30, pike 30-90, pause 90-110, change 110-130, left 130-175, change 175-180, right 180-225, closing 225-265.
  test("skip and back record where they led", () => {
    expect(actEvent(card, started, "next", at(40))).toEqual({ type: "next", at: at(40), to: 90 });
    expect(actEvent(card, started, "back", at(150))).toEqual({ type: "back", at: at(150), to: 130 });
    expect(actEvent(card, started, "hold", at(150))).toEqual({ type: "hold", at: at(150) });
  });

  test("longer: any current step, nothing before the start or after the end", () => {
    expect(extension(card, started, 15, at(40))).toMatchObject({ item: "pike-1", to: 75, over: null });
    expect(extension(card, started, 15, at(100))).toMatchObject({ item: "rest", to: 35 });
    expect(extension(card, started, 15, at(240))).toMatchObject({ item: null, to: 55 });
    expect(extension(card, started, 15, at(10))).toMatchObject({ phase: "opening", to: 45 });
    expect(extension(card, started, 15, at(120))).toMatchObject({ phase: "change", item: "row-left", to: 35 });
    expect(extension(card, [], 15, at(10))).toBeNull();
    expect(extension(card, [...started, { type: "end", at: at(20) }], 15, at(30))).toBeNull();
    const pause: FloorLog = [
      ...started,
      { type: "retime", at: at(100), changed: [{ item: "rest", to: 35 }], dropped: [], closingSeconds: 40 },
    ];
    expect(floorView(card, pause, at(100))).toMatchObject({ phase: "pause", secondsLeft: 25, lateBy: 15 });
  });

  test("says when a move exceeds its longest time", () => {
    const items = samplePlan().items.map((item) =>
      item.kind === "move" && item.id === "pike-1" ? { ...item, range: [30, 65] as [number, number] } : item,
    );
    expect(extension(cardOf({ ...samplePlan(), items }), started, 15, at(40))).toMatchObject({ to: 75, over: 65 });
  });

  test("forty seconds late: one touch makes it on time, and the preview has said what changes", () => {
    expect(latenessAt(card, late, at(60))).toBeCloseTo(40);
    expect(latenessSentence(40)).toBe("The class ends 0:40 late.");
    const answer = endOnTimeAt(card, late, at(60));
    if (!answer.possible) throw new Error("possible by hand");
    const preview = previewOf(floorNow(card, late).plan, answer);
    expect(preview.takes).toBe(true);
    expect(preview.rows.map((row) => row.name)).toContain("Kneeling one-arm row, both sides");
    const sides = (name: string) => (name.endsWith("both sides") ? 2 : 1);
    expect(preview.rows.reduce((sum, row) => sum + (row.from - row.to) * sides(row.name), 0)).toBe(40);
    expect(preview.sentences.at(-1)).toMatch(/^3 items get \d+ to \d+ s less\.$/);
    const log = [...late, retimeEvent(answer, at(60))];
    expect(latenessAt(card, log, at(60))).toBeCloseTo(0);
    expect(floorView(card, log, at(265)).phase).toBe("done");
    expect(floorView(card, log, at(264)).phase).toBe("closing");
    const undone = [...log, actEvent(card, log, "undo", at(65))];
    expect(latenessAt(card, undone, at(65))).toBeCloseTo(40);
    expect(positionAt(card, undone, at(65)).position).toBeCloseTo(25);
  });

  test("names whole pairs that are left out, sides that differ and locks that give way", () => {
    const answer = {
      possible: true,
      changed: [{ item: "row-right", from: 45, to: 40 }],
      dropped: [],
      uneven: ["row-right"],
      unlocked: ["row-right"],
      closingSeconds: 52,
    } as const;
    const { rows, sentences } = previewOf(samplePlan(), answer);
    expect(rows.at(-1)).toMatchObject({ name: "Closing", from: 40, to: 52 });
    expect(sentences).toEqual([
      "Sides differ: Kneeling one-arm row, left 45 s, right 40 s.",
      "Locked time changes too: Kneeling one-arm row, right.",
      "1 item gets 5 s less.",
    ]);
    const gone = previewOf(samplePlan(), {
      ...answer,
      dropped: ["row-left", "row-right"],
      changed: [],
      uneven: [],
      unlocked: [],
    });
    expect(gone.sentences).toEqual(["Left out: Kneeling one-arm row, both sides."]);
  });

  test("works out an hour of views at sixty a second in a moment", () => {
    const answer = endOnTimeAt(card, late, at(60));
    if (!answer.possible) throw new Error("possible by hand");
    const log = [...late, retimeEvent(answer, at(60))];
    const first = floorNow(card, log);
    const since = performance.now();
    for (let n = 0; n < 60 * 60; n++) floorView(card, log, at(60) + n * 16);
    expect(floorNow(card, log)).toBe(first);
    // A minute of views; working the class out anew each time would take far longer.
    expect(performance.now() - since).toBeLessThan(2000);
  });
});

describe("keys", () => {
  test.each([
    ["PageDown", "next"],
    ["PageUp", "back"],
    ["ArrowRight", "next"],
    ["ArrowLeft", "back"],
    [" ", "hold-or-go-on"],
    ["B", "hold-or-go-on"],
    [".", "hold-or-go-on"],
    ["Enter", "next"],
    ["toString", undefined],
    ["x", undefined],
  ])("%s: %s", (key, act) => expect(actOfKey(key)).toBe(act));

  test("a key chosen on the device overrides the default; keys that people need cannot be chosen", () => {
    const chosen = withKey({}, "PageDown", "end-on-time") ?? {};
    expect(actOfKey("PageDown", chosen)).toBe("end-on-time");
    expect(keysOfAct("next", chosen)).toBe("Right, Down, Enter");
    expect(keysOfAct("end-on-time", chosen)).toBe("Page Down, E");
    expect(withKey({}, "Tab", "next")).toBeNull();
  });

  test("a bouncing pedal is one tap; another act right after it counts", () => {
    const counts = steadyTaps();
    expect([0, 40, 90, 200].map((t) => counts("next", t))).toEqual([true, false, false, false]);
    expect(counts("back", 210)).toBe(true);
    expect(counts("next", 200 + SAME_TAP_MS)).toBe(true);
  });
});
