/** What is kept of a cue track never shows: with everything kept the answer is the one of a first time. */
import fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { forgetSpans } from "#lib/cues/kept-spans.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { checkPlan } from "#lib/rules/run.ts";
import { longClass } from "#tests/support/long-class.ts";

type Edit = (plan: Plan, item: MoveItem) => Plan;

const withItem = (plan: Plan, item: MoveItem, change: Partial<MoveItem>): Plan => ({
  ...plan,
  items: plan.items.map((other) => (other === item ? { ...item, ...change } : other)),
});

/** Everything that a placing looks at, changed one at a time. */
const EDITS: Readonly<Record<string, Edit>> = {
  "a line more": (plan, item) => {
    const line = { kind: "form", text: "Long neck, {minutes-left} minutes, then {next-move}." } as const;
    return withItem(plan, item, { script: [...(item.script ?? []), line] });
  },
  "a line less": (plan, item) => withItem(plan, item, { script: (item.script ?? []).slice(1) }),
  "another kind": (plan, item) =>
    withItem(plan, item, { script: (item.script ?? []).map((line) => ({ ...line, kind: "focus" })) }),
  "more time": (plan, item) => withItem(plan, item, { seconds: item.seconds + 5 }),
  "a planned change": (plan, item) => withItem(plan, item, { transitionSeconds: 3 }),
  "another side": (plan, item) => withItem(plan, item, { side: "left" }),
  "other springs": (plan, item) => withItem(plan, item, { springs: {} }),
  "another facing": (plan, item) => withItem(plan, item, { facing: "right" }),
  "further out": (plan, item) => withItem(plan, item, { offsetMm: 50 }),
  "another move": (plan, item) => withItem(plan, item, { move: Object.keys(plan.moves)[0] ?? item.move }),
  "another name": (plan, item) => {
    const move = plan.moves[item.move];
    return move ? { ...plan, moves: { ...plan.moves, [item.move]: { ...move, name: `${move.name}, slow` } } } : plan;
  },
  "another tempo": (plan, item) => {
    const move = plan.moves[item.move];
    const tempo = { outSeconds: 8, backSeconds: 9 };
    return move ? { ...plan, moves: { ...plan.moves, [item.move]: { ...move, tempo } } } : plan;
  },
  "taken out": (plan, item) => ({ ...plan, items: plan.items.filter((other) => other !== item) }),
  "a pause before it": (plan, item) => ({
    ...plan,
    items: plan.items.flatMap((other): Plan["items"] =>
      other === item ? [{ id: `${item.id}-p`.slice(-60), kind: "pause", seconds: 7 }, other] : [other],
    ),
  }),
  "slower speech": (plan) => ({ ...plan, speech: { syllablesPerSecond: 3, pauseSeconds: 1 } }),
  "a later heads-up": (plan) => ({ ...plan, headsUpSeconds: 8 }),
  "a longer count": (plan) => ({ ...plan, countInSeconds: 5 }),
  "a longer close": (plan) => ({ ...plan, closingSeconds: 200 }),
  "springs called otherwise": (plan) => {
    const springs = plan.equipment.springs.map((spring) => ({ ...spring, label: `${spring.label} one` }));
    return { ...plan, equipment: { ...plan.equipment, springs } };
  },
};

/** A class whose set-up lines name the move after, so that a span reaches as far as it can. */
function toldAhead(items: number, lines: number): Plan {
  const plan = longClass(items, lines);
  const ahead = { kind: "setup", text: "Ready, then {next-move}." } as const;
  return {
    ...plan,
    items: plan.items.map((item) =>
      item.kind === "move" ? { ...item, script: [ahead, ...(item.script ?? [])] } : item,
    ),
  };
}

const edited = (plan: Plan, edit: string, at: number): Plan => {
  const moves = plan.items.flatMap((item) => (item.kind === "move" ? [item] : []));
  const item = moves[at % Math.max(1, moves.length)];
  return item ? (EDITS[edit]?.(plan, item) ?? plan) : plan;
};

const firstTime = (plan: Plan) => {
  forgetSpans();
  return cueTrack(plan);
};

describe("kept spans", () => {
  beforeEach(forgetSpans);

  test.each(Object.keys(EDITS))("are not taken for others after %s", (edit) => {
    const plan = toldAhead(12, 80);
    for (const at of [0, 2, 3, 7]) {
      const after = edited(plan, edit, at);
      const want = firstTime(after);
      forgetSpans();
      cueTrack(plan);
      expect(cueTrack(after)).toEqual(want);
    }
  });

  test("any run of edits gives the findings and the track of a first time", () => {
    const step = fc.tuple(fc.constantFrom(...Object.keys(EDITS)), fc.nat(40));
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 8 }), (steps) => {
        forgetSpans();
        let plan = toldAhead(10, 60);
        cueTrack(plan);
        for (const [edit, at] of steps) {
          plan = edited(plan, edit, at);
          const [track, found] = [cueTrack(plan), checkPlan(plan)];
          expect(track).toEqual(firstTime(plan));
          forgetSpans();
          expect(found).toEqual(checkPlan(plan));
        }
      }),
      { seed: 11, numRuns: 25 },
    );
  });

  test("that are changed by whoever got them stay as they were", () => {
    const plan = longClass(10, 60);
    const want = structuredClone(cueTrack(plan));
    for (const cue of cueTrack(plan).cues) Object.assign(cue, { text: "spoilt", from: -1 });
    expect(cueTrack(plan)).toEqual(want);
  });
});
