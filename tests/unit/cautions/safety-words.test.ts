/** Safety lines as coaches say them, and lines that would suit any move. Neither list was made from the vocabulary. */
import { describe, expect, test } from "vitest";
import { concernsOf } from "#lib/cautions/concern.ts";
import { spokenOf, spokenWith } from "#lib/cautions/safety-words.ts";
import { MOVE_CAUTIONS, type MoveCaution } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { PHRASES } from "#seed/phrases/phrases.ts";

const safety = (text: string) => ({ kind: "safety" as const, text });

const SPEAKS: Readonly<Record<MoveCaution, readonly string[]>> = {
  "wrist-load": [
    "If your wrists complain, make fists.",
    "Lower to your forearms any time.",
    "Spread the fingers wide.",
  ],
  kneeling: ["Slide a folded towel under your knees.", "Kneeling hurts? Sit instead.", "There are pads by the wall."],
  overhead: ["Cranky shoulders stop at ear height.", "Keep the arms lower if you need to.", "No pinching, please."],
  "loaded-flexion": [
    "Lower back sore? Stay upright.",
    "Don't round further than feels good.",
    "Keep your head down if your neck is tired.",
  ],
  "loaded-rotation": ["Twist only as far as is easy.", "If your back grumbles, make the turn smaller."],
  supine: [
    "Feeling light-headed? Roll onto your side.",
    "Prop yourself up if you're pregnant.",
    "Sit up for this one if lying flat is no good.",
  ],
  prone: ["Not on your belly today? Kneel up.", "Put a towel under your ribs.", "Lying face down isn't for everybody."],
  "head-down": ["Come up slowly afterwards.", "If you get dizzy, stay in plank.", "Skip this with high eye pressure."],
  "long-hold": ["Rest whenever you like.", "Keep breathing, no held breath.", "Come out early if you shake."],
  "unstable-carriage": ["Keep the carriage slow.", "Hold on to the bar.", "It can slip away from you, so small range."],
  "single-leg-balance": ["Touch the bar if you wobble.", "Toes down when you lose your balance.", "Hold the wall."],
};

const ANY_MOVE = [
  ...["Enjoy this one.", "Be careful.", "Stay safe.", "Take care of yourselves.", "Listen to your body."],
  ...["If anything hurts, stop.", "Stop if you feel pain.", "Have fun!", "You've got this.", "Do what you can."],
  ...["Watch your form.", "Go at your own pace.", "Safety first.", "Ask me if you are unsure.", "Look after yourself."],
  ...["Nice work, everybody.", "Let me know about injuries.", "Don't overdo it.", "Quality over quantity."],
];

describe("a safety line", () => {
  test.each(Object.entries(SPEAKS))("speaks of %s by joint, posture or remedy", (caution, lines) => {
    for (const line of lines) expect(spokenOf(safety(line)), line).toContain(caution);
  });

  test.each(ANY_MOVE)("that would suit any move speaks of no caution: %s", (line) => {
    expect(spokenOf(safety(line))).toEqual([]);
  });

  test("is found inside no other word", () => {
    expect(spokenOf(safety("Handsome padlocks, unturned liege."))).toEqual([]);
    expect(spokenOf(safety("Barely matters, sitcom, lyre."))).toEqual([]);
  });

  test("may use a studio's own words, with a star for any ending and signs taken as they are", () => {
    const more = { kneeling: ["bolster*"], overhead: ["a+b (c)"] };
    expect(spokenWith(safety("Take the BOLSTERS."), more)).toEqual(["kneeling"]);
    expect(spokenWith(safety("Try a+b (c) today"), more)).toEqual(["overhead"]);
    expect(spokenWith(safety("Take the bolsters."), {})).toEqual([]);
  });

  test("of the demo library speaks of a caution of its move", () => {
    expect(
      Object.values(PHRASES).flatMap(({ safety: text }) => (text && spokenOf(safety(text)).length === 0 ? [text] : [])),
    ).toEqual([]);
  });
});

describe("what a class says of its cautions", () => {
  const lunge = { ...exampleMoves.squat, cautions: ["unstable-carriage" as const] };
  const moves = { ...exampleMoves, lunge };
  const heading = (id: string) => ({ id, kind: "heading" as const, title: id });
  const item = (id: string, move: string, text?: string) =>
    exampleMove(id, { move, script: text === undefined ? [] : [safety(text)] });
  const unwarned = (...items: Parameters<typeof examplePlan>[0][number][]) =>
    concernsOf(examplePlan(items, { moves }), MOVE_CAUTIONS).flatMap((one) =>
      one.unwarned.length > 0 ? one.item.id : [],
    );

  test("counts to the end of its block", () => {
    expect(
      unwarned(heading("one"), item("a", "plank", "Fists are fine."), item("b", "squat"), item("c", "plank")),
    ).toEqual([]);
    expect(unwarned(heading("one"), item("a", "plank", "Fists are fine."), heading("two"), item("c", "plank"))).toEqual(
      ["c"],
    );
  });

  test("counts for the caution that it speaks of, on a move that has it", () => {
    const planks = [item("a", "plank", "Enjoy this one."), item("b", "lunge", "Keep your hands on the bars.")];
    expect(unwarned(heading("one"), ...planks, item("c", "plank"))).toEqual(["a", "c"]);
  });

  test("does not count backwards", () => {
    expect(unwarned(heading("one"), item("a", "plank"), item("b", "plank", "Fists are fine."))).toEqual(["a"]);
  });

  test("without headings counts for the same move right after it only", () => {
    expect(
      unwarned(item("a", "plank", "Fists are fine."), item("b", "plank"), item("c", "squat"), item("d", "plank")),
    ).toEqual(["d"]);
  });
});
