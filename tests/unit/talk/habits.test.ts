/**
 * Claims in many habits of speech: terse and chatty, formal and casual, as an order, with a reason, in a second language. Each
 * is said once where it is true and once where it is not; most were written before the reader knew their words.
 */
import { describe, expect, it } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { Move, MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";

const moves = {
  ...exampleMoves,
  press: { ...exampleMoves.press, exhaleOn: "out" } satisfies Move,
  crossed: { ...exampleMoves.press, exhaleOn: "back" } satisfies Move,
  reach: { ...exampleMoves.plank, name: "Side plank and reach" },
  lunge: { ...exampleMoves.squat, name: "Split lunge", pattern: "lunge", sides: "each" } satisfies Move,
  fly: { ...exampleMoves.press, name: "Chest fly" } satisfies Move,
};
const heading = (id: string): PlanItem => ({ id, kind: "heading", title: "Work" });
const line = (text: string, at?: ScriptLine["at"], kind: ScriptLine["kind"] = "form"): Partial<MoveItem> => ({
  script: [{ kind, text, ...(at ? { at } : {}) }],
});
const item = (id: string, move: keyof typeof moves, seconds: number, more: Partial<MoveItem> = {}): PlanItem =>
  exampleMove(id, { move, seconds, script: [], ...more });
const plan = (items: PlanItem[]): Plan => examplePlan(items, { moves });
const contradictions = (of: Plan): string[] =>
  checkPlan(of)
    .findings.filter(({ rule }) => rule === "says-otherwise")
    .map(({ message }) => message);

/** The third of eight moves, a press of 5 s a repetition. */
const inTheMiddle = (said: Partial<MoveItem>, seconds = 150, more: Partial<MoveItem> = {}): Plan =>
  plan([
    ...[heading("h1"), item("a", "squat", 60), heading("h2"), item("b", "fly", 120)],
    item("said", "press", seconds, { springs: { heavy: 1 }, ...more, ...said }),
    ...[item("c", "reach", 120), item("d", "lunge", 120, { side: "left" }), item("e", "lunge", 120, { side: "right" })],
    ...[heading("h3"), item("f", "row", 120, { side: "left" }), item("g", "row", 120, { side: "right" })],
  ]);
/** Three rounds of press and lunge; the line is in the press of one of them. */
const inRound = (said: Partial<MoveItem>, round: number): Plan =>
  plan([
    ...[item("a", "squat", 60), heading("h")],
    ...[1, 2, 3].flatMap((n) => [
      item(`press-${n}`, "press", 60, n === round ? said : {}),
      item(`left-${n}`, "lunge", 60, { side: "left" }),
      item(`right-${n}`, "lunge", 60, { side: "right" }),
    ]),
    item("z", "squat", 60),
  ]);
const onSide = (said: Partial<MoveItem>, side: "left" | "right"): Plan =>
  plan([
    item("a", "squat", 60),
    item("left", "lunge", 60, { side: "left", ...(side === "left" ? said : {}) }),
    item("right", "lunge", 60, { side: "right", ...(side === "right" ? said : {}) }),
    item("b", "fly", 100),
  ]);
const atTheEnd = (said: Partial<MoveItem>): Plan =>
  plan([item("a", "squat", 60), item("b", "fly", 60), heading("h"), item("said", "press", 60, said)]);
const atTheStart = (said: Partial<MoveItem>): Plan =>
  plan([heading("h1"), item("said", "press", 60, said), item("a", "squat", 60), heading("h2"), item("b", "fly", 60)]);

interface Habit {
  readonly text: string;
  readonly right: Plan;
  readonly wrong: Plan;
}
const habits = (texts: string, right: (text: string) => Plan, wrong: (text: string) => Plan): Habit[] =>
  texts
    .split("|")
    .map((text) => text.trim())
    .map((text) => ({ text, right: right(text), wrong: wrong(text) }));
const left = (seconds: number, texts: string): Habit[] =>
  habits(
    texts,
    (text) => inTheMiddle(line(text, { leftSeconds: seconds + 2 })),
    (text) => inTheMiddle(line(text, { leftSeconds: seconds < 60 ? seconds + 75 : 30 })),
  );
const reps = (count: number, texts: string): Habit[] =>
  habits(
    texts,
    (text) => inTheMiddle(line(text, { leftSeconds: count * 5 + 2 })),
    (text) => inTheMiddle(line(text, { leftSeconds: count * 5 + 65 })),
  );
const early = { afterSeconds: 8 };

const HABITS: Readonly<Record<string, Habit[]>> = {
  "time left": [
    ...left(5, "That's us nearly done: five seconds. | In five seconds we are out. | Just five more seconds."),
    ...left(10, "You can stop in ten. | Ten seconds and you're free. | Just ten seconds between you and a rest."),
    ...left(15, "The clock says fifteen. | Stay with me for fifteen. | The last quarter of a minute."),
    ...left(20, "We're down to twenty seconds. | There remain twenty seconds. | Twenty seconds is all that's left."),
    ...left(30, "Half a minute stands between you and a rest. | Another half minute like this."),
    ...left(75, "A minute fifteen left. | A minute and a quarter to go."),
    ...left(90, "Minute thirty to go. | One and a half minutes left."),
  ],
  repetitions: [
    ...reps(2, "Just two left in you. | Only a couple more. | Two further repetitions, please. | We do yet two more."),
    ...reps(3, "Another three, same tempo. | Time for three more. | Three more before we change."),
    ...reps(4, "I'm only asking for four more. | Four more on this side."),
    ...reps(5, "You owe me five more. | And another five."),
    ...reps(8, "Eight more of the same. | Let's do another eight. | Give me eight."),
  ],
  halfway: habits(
    "That's the middle of it. | This is the midpoint. | Half is done already. | You've got half of it left. | " +
      "As much again and you're done. | We've reached the halfway line. | Same again and we're finished. | " +
      "Fifty per cent done. | Half the work's done. | That's one half in the bag. | You are half through.",
    (text) => inTheMiddle(line(text, { afterSeconds: 75 })),
    (text) => inTheMiddle(line(text, { afterSeconds: 6 })),
  ),
  "more than half": habits(
    "We're over the hump. | Second half now. | The first half is over. | You're on the home side of halfway.",
    (text) => inTheMiddle(line(text, { leftSeconds: 20 })),
    (text) => inTheMiddle(line(text, { afterSeconds: 6 })),
  ),
  "the last": habits(
    "We finish with this. | This finishes the class. | This is where we finish. | That's the closer. | " +
      "This will be the last thing we do today. | With this we finish the class. | This is the end of the class. | " +
      "We wrap up with this. | Last station of the day. | You won't have to do anything else after this. | " +
      "Then the class is over. | To finish the class, this press. | After this it's just the stretch.",
    (text) => atTheEnd(line(text, { afterSeconds: 20 })),
    (text) => inTheMiddle(line(text, { afterSeconds: 20 })),
  ),
  "the first": habits(
    "We start with this. | This is our opener. | We kick off with this. | This opens the class. | " +
      "Let's start the class with this one. | It's the very first thing we do today. | First up today, this. | " +
      "This one gets us started, first of the day. | Starting the class with a press.",
    (text) => atTheStart(line(text, { afterSeconds: 5 })),
    (text) => inTheMiddle(line(text, { afterSeconds: 5 })),
  ),
  "the second round": habits(
    "Second time through. | Second lap. | This is your second go at it. | Round two, folks. | One more round after this. | " +
      "This is the second of three rounds. | Set two of three. | One more time round.",
    (text) => inRound(line(text, early), 2),
    (text) => inRound(line(text, early), 3),
  ),
  "the last round": habits(
    "Last lap. | Third and final set. | The last of three rounds. | Our last go at this. | You won't see this one again today. | " +
      "Last time we do this. | That's the last of the presses. | Third lap.",
    (text) => inRound(line(text, early), 3),
    (text) => inRound(line(text, early), 1),
  ),
  "what is next": habits(
    "From here to the X. | We go to the X from here. | What's next? The X. | Then we're into the X. | " +
      "Straight from this into the X. | This takes us into the X. | Because the X comes next, don't use everything up. | " +
      "Our next exercise will be the X. | When we're done here, it's the X. | The X is waiting for you next. | " +
      "The X is what comes next. | We'll follow this with the X. | Soon we change to the X. | Afterwards comes the X. | " +
      "The X follows straight on. | Don't go anywhere, the X is next.",
    (text) => inTheMiddle(line(text.replace("X", "side plank and reach"), { leftSeconds: 20 })),
    (text) => inTheMiddle(line(text.replace("X", "kneeling row"), { leftSeconds: 20 })),
  ),
  breath: habits(
    "The out-breath goes with the press. | Empty the lungs as you push. | When you push, you exhale. | " +
      "The exhale is on the push. | Fill the lungs as you come back in. | We exhale when it's hard. | " +
      "Let the air go while you press. | Inhale on the return. | Breathe out through the mouth as you press. | " +
      "In through the nose as you return.",
    (text) => inTheMiddle(line(text)),
    (text) => inTheMiddle(line(text), 150, { move: "crossed" }),
  ),
  springs: habits(
    "You're on two lights and a heavy. | You should have two lights and one heavy on. | Two lights plus a heavy for this. | " +
      "That's a heavy and two lights. | You need two lights and a heavy here. | We're working on a heavy and two lights.",
    (text) => inTheMiddle(line(text), 150, { springs: { light: 2, heavy: 1 } }),
    (text) => inTheMiddle(line(text), 150, { springs: { light: 1, heavy: 1 } }),
  ),
  "one spring": habits(
    "We are on one single spring. | There's only a light on. | Only the light on for this. | One light is plenty.",
    (text) => inTheMiddle(line(text), 150, { springs: { light: 1 } }),
    (text) => inTheMiddle(line(text), 150, { springs: { light: 2, heavy: 1 } }),
  ),
  "the left side": habits(
    "This leg's your left. | This is the left. | Left leg first. | It's your left that's working. | Left leg's turn. | " +
      "It is the turn of the left. | We start on the left.",
    (text) => onSide(line(text, early, "start"), "left"),
    (text) => onSide(line(text, early, "start"), "right"),
  ),
  "the right side": habits(
    "We've done the left, now the right. | Left's done, this is the right. | We're on the right this time. | " +
      "Left was first, so now the right.",
    (text) => onSide(line(text, early, "start"), "right"),
    (text) => onSide(line(text, early, "start"), "left"),
  ),
};

describe.each(Object.entries(HABITS))("%s", (_kind, said) => {
  it.each(said)("“$text” is silent where it is true, and found where it is not", ({ right, wrong }) => {
    expect(contradictions(right)).toEqual([]);
    expect(contradictions(wrong)).not.toEqual([]);
  });
});

/** Words that hold those of a claim and claim nothing, or nothing of this class. */
describe("only a way of speaking", () => {
  it.each([
    "Lower down to the last rib.",
    "The middle of the foot stays heavy.",
    "Both hands on the bar, the left over the right.",
    "Two breaths and a sigh.",
    "Start with the tail, end with the crown of the head.",
    "Find the end of the breath.",
    "Open with the elbows, not the hands.",
    "Last thing you want is a stiff neck.",
    "Same again, and again.",
    "Half the weight in each hand.",
    "Breathe through the nose if you like.",
    "A couple of you are ahead of me.",
    "That's right.",
    "Left a bit, right a bit.",
    "You'll feel the last of the light go.",
    "Nothing else in your head now.",
    "Don't stop in the middle of it.",
    "It takes a minute to find the rhythm.",
    "Finish with the arms long.",
    "We end with straight arms.",
    "From here to the ceiling, one line.",
    "This takes us into the shoulders.",
    "Once you're over the hump of the back, relax.",
    "Ten out of ten for that.",
  ])("%s", (text) => {
    expect(contradictions(inTheMiddle(line(text, early)))).toEqual([]);
    expect(contradictions(onSide(line(text, early, "start"), "right"))).toEqual([]);
  });
});
