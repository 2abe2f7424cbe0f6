/** What set-up lines tell, sentence by sentence: each act with its verdict, and what is missing. */
import { describe, expect, it, test } from "vitest";
import { planActs } from "#lib/acts/plan-acts.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { exampleEquipment, exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";

const moves: Plan["moves"] = {
  ...exampleMoves,
  legs: { ...exampleMoves.squat, name: "Leg lowering", feet: "cable-strap", position: "supine" },
  behind: { ...exampleMoves.squat, name: "Back stand", station: "back" },
  bear: { ...exampleMoves.squat, name: "Bear hold", position: "quadruped" },
};
const script = (text: string) => ({ script: [{ kind: "setup" as const, text }] });

type Change = readonly [Partial<MoveItem>, Partial<MoveItem>];
const planOf = ([before, after]: Change, text: string): Plan =>
  examplePlan([exampleMove("a", before), exampleMove("b", { ...after, ...script(text) })], { moves });
const rowOf = (change: Change, text: string) => {
  const row = planActs(planOf(change, text))[1];
  if (!row) throw new Error("two rows");
  return row;
};

const objectWords = (value: unknown): string =>
  typeof value === "object" && value !== null
    ? Object.entries(value)
        .map(([id, n]) => `${id} ${n}`)
        .join(" ")
    : String(value);
/** "turn back", "springs-now light 2 (contradicted)". */
function toldWords(change: Change, text: string): string {
  return rowOf(change, text)
    .told.map(({ act, line: _line, from: _from, to: _to, verdict, ...about }) => {
      const words = [act, ...Object.values(about).map(objectWords)].filter((word) => word !== "").join(" ");
      return verdict === "told" ? words : `${words} (${verdict})`;
    })
    .join(", ");
}

const ONE_MORE: Change = [{}, { springs: { light: 2 } }];
const SWAP: Change = [{ springs: { heavy: 1, light: 1 } }, { springs: { light: 2 } }];
const TURN: Change = [{}, { facing: "back" }];
const QUARTER: Change = [{}, { facing: "left" }];
const OTHER_SIDE: Change = [
  { move: "row", side: "left" },
  { move: "row", side: "right" },
];
const LET_GO: Change = [{ move: "press" }, { move: "plank" }];
const OUT_OF_STRAP: Change = [{ move: "legs" }, { move: "behind", facing: "back" }];
const LIE: Change = [{}, { move: "legs" }];
const TAKE: Change = [{}, { move: "press" }];
const SAME: Change = [{}, {}];

const holds = (change: Change, rows: readonly (readonly [string, string])[]) =>
  it.each(rows)("%s", (text, expected) => expect(toldWords(change, text)).toBe(expected));

describe("one more spring", () => {
  holds(ONE_MORE, [
    ["Carriage home, two light.", "carriage-home, springs-now light 2"],
    ["Dock the carriage, add one light.", "carriage-home, spring-on light 1"],
    ["Bring the carriage all the way in and pop another light on.", "carriage-home, spring-on light 1"],
    ["Close the carriage; grab another light spring.", "carriage-home, spring-on light 1"],
    ["Let's get the carriage home and throw on a second light.", "carriage-home, spring-on light 1"],
    ["I want you to bring your carriage home for me, then hook on one more light.", "carriage-home, spring-on light 1"],
    ["We're going to go up to two light springs, okay?", "springs-now light 2"],
    ["Carriage home, please, guys. You'll be on 2 light.", "carriage-home, springs-now light 2"],
    ["Add one, please.", "spring-on light 1"],
    ["Springs: 2", "springs-now light 2"],
    ["Now both lights.", "springs-now light 2"],
    ["2 x light", "springs-now light 2"],
    ["Carriage home, {springs}.", "carriage-home, springs-now light 2"],
    ["Two light, then carriage home.", "springs-now light 2 (wrong-order), carriage-home"],
    ["Two light once the carriage is home.", "springs-now light 2, carriage-home"],
    ["Two light, but carriage home first.", "springs-now light 2, carriage-home"],
    ["Before you add a light, carriage home.", "spring-on light 1, carriage-home"],
    ["Don't touch a spring until the carriage is home. Two light.", "carriage-home, springs-now light 2"],
    ["Same springs.", "stay light 1 (contradicted)"],
    ["Keep your springs as they are.", "stay light 1 (contradicted)"],
    ["Don't touch the springs.", "stay light 1 (contradicted)"],
    ["No need to change springs.", "stay light 1 (contradicted)"],
    ["All the same.", "stay (contradicted)"],
    ["Same springs, but add a light.", "stay light 1 (unsure), spring-on light 1"],
    ["Three light.", "springs-now light 3 (contradicted)"],
    ["Add two lights.", "spring-on light 2 (contradicted)"],
    ["Take one light off.", "spring-off light 1 (contradicted)"],
    ["Add a heavy.", "spring-on heavy 1 (contradicted)"],
    ["Down to one light.", "springs-now light 1 (contradicted)"],
    ["If you like, add another light.", "spring-on light 1 (unsure)"],
    ["A little heavier now.", "springs-now (unsure)"],
    ["Strong core, light touch, a light bend, on the balls of your feet.", ""],
    ["Breathe all the way in.", ""],
    ["Carriage in and out, never quite home.", ""],
  ]);
});

describe("two more springs", () => {
  holds(
    [{}, { springs: { light: 3 } }],
    [
      ["Add a light, then another light.", "spring-on light 1, spring-on light 1"],
      ["Add a light.", "spring-on light 1 (contradicted)"],
      ["Up to three.", "springs-now light 3"],
    ],
  );
});

describe("one spring for another", () => {
  holds(SWAP, [
    ["Swap the heavy for a light.", "spring-off heavy 1, spring-on light 1"],
    ["Swap heavy to light.", "spring-off heavy 1, spring-on light 1"],
    ["Replace the heavy with a light spring.", "spring-off heavy 1, spring-on light 1"],
    ["One light instead of the heavy.", "spring-off heavy 1, spring-on light 1"],
    ["Heavy off, one light on.", "spring-off heavy 1, spring-on light 1"],
    ["Lose the heavy, pick up a light.", "spring-off heavy 1, spring-on light 1"],
    ["Unhook the heavy and hook up one more light.", "spring-off heavy 1, spring-on light 1"],
    ["Drop a heavy, two lights.", "spring-off heavy 1, springs-now light 2"],
    ["Not two heavy but two light.", "springs-now light 2"],
    ["Two light, not two heavy.", "springs-now light 2"],
    ["Two heavy.", "springs-now heavy 2 (contradicted)"],
  ]);
});

describe("a turn", () => {
  holds(TURN, [
    ["Face the back.", "turn back"],
    ["Spin around.", "turn back"],
    ["Right, now everyone turn all the way around.", "turn back"],
    ["Let's all turn to face the back.", "turn back"],
    ["You'll be facing the back of the room.", "turn back"],
    ["Face the back, not the front.", "turn back"],
    ["Face the front.", "turn front (contradicted)"],
    ["Keep facing the front.", "stay front (contradicted)"],
    ["Don't turn.", "stay front (contradicted)"],
    ["Stay as you are.", "stay (contradicted)"],
    ["Stay where you are.", "stay (contradicted)"],
    ["Turn to the mirror.", "turn (unsure)"],
    ["Face your instructor.", "turn (unsure)"],
    ["Chest to the front.", "turn front (unsure)"],
    ["Strong back, back flat, arms in front.", ""],
    ["Left foot forward, back foot high.", ""],
    ["Sit back a little.", ""],
  ]);
  holds(QUARTER, [
    ["Turn left.", "turn left"],
    ["Quarter turn to the left.", "turn left"],
    ["Sideways now.", "turn left"],
    ["Turn around.", "turn left (unsure)"],
    ["Face the right.", "turn right (contradicted)"],
  ]);
});

describe("a studio's own words", () => {
  it("are read as the words that they stand for", () => {
    const text = "Trolley moored, toggles down, come to a plank.";
    const plan = planOf(LET_GO, text);
    const told = (words?: Record<string, string>) => planActs(plan, words)[1]?.told.map(({ act }) => act);
    expect(told()).toEqual(["position"]);
    expect(told({ trolley: "carriage", moored: "docked", Toggles: "handles" })).toEqual([
      "carriage-home",
      "handles-down",
      "position",
    ]);
  });
});

describe("the other ways to say it", () => {
  holds(ONE_MORE, [
    ["Dock. Light on.", "carriage-home, spring-on light 1"],
    ["Ride it home, and a light for company.", "carriage-home, spring-on light 1"],
    ["Once the carriage has returned, reach for a light as well.", "carriage-home, spring-on light 1"],
    ["Glide home, one light on with the other.", "carriage-home, spring-on light 1"],
    ["A light goes on, but only after the carriage is home.", "spring-on light 1, carriage-home"],
    ["Before the light goes on, get home.", "spring-on light 1, carriage-home"],
    ["Carriage home. Light spring, one more.", "carriage-home, spring-on light 1"],
    ["Two lights now, so home you come.", "springs-now light 2, carriage-home"],
    ["Light on, carriage home before that.", "spring-on light 1, carriage-home"],
  ]);
  holds(SWAP, [
    ["Home. Heavy comes off, light goes on.", "carriage-home, spring-off heavy 1, spring-on light 1"],
    ["Home, light in place of the heavy.", "carriage-home, spring-off heavy 1, spring-on light 1"],
    ["Home, light for heavy.", "carriage-home, spring-off heavy 1, spring-on light 1"],
    ["Home, out with the heavy, in with a light.", "carriage-home, spring-off heavy 1, spring-on light 1"],
    ["Home, take one spring off, the heavy.", "carriage-home, spring-off heavy 1"],
    ["Home, everything off but two lights.", "carriage-home, springs-now light 2"],
  ]);
  holds(TURN, [
    ["Come round to face the back.", "turn back"],
    ["One-eighty.", "turn back"],
    ["Look to the front.", "turn front (contradicted)"],
    ["Stay facing the front.", "stay front (contradicted)"],
    ["Don't turn round.", "stay front (contradicted)"],
  ]);
  holds(OTHER_SIDE, [
    ["On the right.", "side right"],
    ["Stay on the left leg.", "stay left (contradicted)"],
    ["Left leg.", "side left (contradicted)"],
    ["This is the left side. {side} arm long.", "side left (contradicted), side right"],
    ["The other arm is quiet.", ""],
    ["Left hip forward.", ""],
  ]);
  holds(LET_GO, [
    ["Keep the handles, forearms down.", "stay (contradicted), position plank"],
    ["Let the handles go.", "handles-down 2"],
  ]);
  holds(SAME, [
    ["Strong back, flat back, light feet, heavy elbows.", ""],
    ["Coming up, the bear hold: hands and knees.", "position quadruped (not-planned)"],
    ["Coming up next, the back stand.", ""],
  ]);
});

describe("a side", () => {
  holds(OTHER_SIDE, [
    ["Other side.", "side right"],
    ["Change feet.", "side right"],
    ["Swap legs.", "side right"],
    ["Right arm.", "side right"],
    ["{side} side.", "side right"],
    ["Left side.", "side left (contradicted)"],
    ["Same side.", "stay left (contradicted)"],
    ["To the left side of the carriage.", ""],
  ]);
  it("does not tell that the handle changes hands", () => {
    expect(rowOf(OTHER_SIDE, "Other side.").missing.map(({ act }) => act)).toEqual(["handles-down", "handles-up"]);
    expect(rowOf(OTHER_SIDE, "Handle in the other hand.").missing).toEqual([]);
    expect(rowOf(OTHER_SIDE, "{move}, again.").missing).toHaveLength(3);
  });
});

describe("hands and feet", () => {
  holds(LET_GO, [
    ["Handles down, come to a plank.", "handles-down 2, position plank"],
    ["Let go of the handles.", "handles-down 2"],
    ["Hang up the handles and come forward into a high plank.", "handles-down 2, position plank"],
    ["Put one handle down.", "handles-down 1 (contradicted)"],
    ["Take both handles.", "handles-up 2 (contradicted)"],
    ["Keep hold of the handles.", "stay (contradicted)"],
    ["Don't let go.", "stay (contradicted)"],
    ["Come to a plank, then handles down.", "position plank (wrong-order), handles-down 2"],
    ["Before you come into plank, put the handles down.", "position plank, handles-down 2"],
    ["Kneel.", "position kneeling (contradicted)"],
  ]);
  holds(TAKE, [
    ["Grab both handles and kneel.", "handles-up 2, position kneeling"],
    ["A handle in each hand, kneel tall.", "handles-up 2, position kneeling"],
    ["Take one handle.", "handles-up 1 (contradicted)"],
    ["Handles down.", "handles-down (contradicted)"],
    ["Kneel, hands at the chest.", "position kneeling"],
  ]);
  holds(OUT_OF_STRAP, [
    [
      "Out of the strap, step onto the back platform, face the back.",
      "strap-off, station back, position standing, turn back",
    ],
    [
      "Slip your foot out, climb up on the back platform, turn around.",
      "strap-off, station back, position standing, turn back",
    ],
    [
      "Stand on the back platform, then out of the strap.",
      "position standing (wrong-order), station back (wrong-order), strap-off",
    ],
    ["Leave the straps on.", "stay (contradicted)"],
    ["Stand on the front platform.", "position standing, station front (contradicted)"],
  ]);
  holds(LIE, [
    ["Lie down on the carriage, foot in the cable strap.", "position supine, station carriage, strap-on"],
    ["Lie face down, strap on.", "position prone (contradicted), strap-on"],
  ]);
});

describe("where nothing changes", () => {
  holds(SAME, [
    ["Stay as you are.", "stay"],
    ["No change.", "stay"],
    ["Stand tall, on one light.", "position standing, springs-now light 1"],
    ["Add one light.", "spring-on light 1 (not-planned)"],
    ["Face the back.", "turn back (not-planned)"],
    ["Out of the strap.", "strap-off (not-planned)"],
    ["Put the handles down.", "handles-down (not-planned)"],
  ]);
  it("a fact that holds, and a carriage that comes home, are no findings", () => {
    const found = (text: string) =>
      checkPlan(planOf(SAME, text))
        .findings.filter(({ rule }) => rule === "says-otherwise")
        .map(({ message }) => message);
    expect(found("Carriage home, stand tall, on one light, face the front.")).toEqual([]);
    expect(found("Add one light.")).toEqual([
      "Squat: the set-up says “Add one light”, but the springs stay: one light. Change the line, or the plan.",
    ]);
  });
});

it.each([
  "Feet hip-width, soft knees, hands on hips, chest open.",
  "Push the carriage out with a strong leg, control it in.",
  "Step the left foot back a little and hinge forward.",
  "Press through the back foot, front knee over the ankle, toes turned out.",
  "Reach your right hand to the front, look down at the floor.",
  "Slide out for two, in for two. Three, two, one.",
  "Sit low, hips back and down. Weight in your heels.",
  "Rotate the chest to the left, half a turn of the wrist.",
  "Hands on the floor if you need. Kneel if you like.",
  "Add one more pulse. One more, down and up. Take it down, take one more.",
  "We'll do ten on this side, then switch. Left side first.",
  "Face relaxed, jaw soft. Round the back, roll down. Stay tall and stay low.",
  "Next we lie down. Last time we stood on the floor.",
  "Feet on the carriage, hands free, other leg lifted.",
])("words about the work contradict nothing: %s", (text) => {
  const { told } = rowOf(SAME, text);
  expect(told.filter(({ verdict }) => verdict === "contradicted" || verdict === "not-planned")).toEqual([]);
});

describe("a reading", () => {
  it("points into the original text, whatever letters it has", () => {
    const text = "Très bien… “Now” – TURN\tround, 👋 don’t stop!";
    const [told] = rowOf(TURN, text).told;
    expect(told && text.slice(told.from, told.to)).toBe("TURN\tround");
  });

  it("includes the words that negate", () => {
    const text = "Please don’t touch the springs.";
    const [told] = rowOf(ONE_MORE, text).told;
    expect(told && text.slice(told.from, told.to)).toBe("don’t touch the springs");
  });

  it("names the line in the script", () => {
    const item = exampleMove("b", {
      facing: "back",
      script: [
        { kind: "breath", text: "Face the back." },
        { kind: "setup", text: "Face the back." },
      ],
    });
    expect(planActs(examplePlan([exampleMove("a"), item]))[1]?.told).toEqual([
      { act: "turn", facing: "back", line: 1, from: 0, to: 13, verdict: "told" },
    ]);
  });

  it("takes the studio's own names of springs, the longest first, and the plural", () => {
    const [light, heavy] = exampleEquipment.springs;
    if (!light || !heavy) throw new Error("two springs");
    const springs = [light, { ...heavy, label: "extra light" }, { ...heavy, id: "beam", label: "Träger" }];
    const plan = {
      ...planOf([{}, { springs: { heavy: 1, beam: 2 } }], "Two trägers and one extra light."),
      equipment: { ...exampleEquipment, springs },
    };
    expect(planActs(plan)[1]?.told).toMatchObject([
      { act: "springs-now", springs: { heavy: 1, beam: 2 }, verdict: "told" },
    ]);
  });

  it("covers what a pause before the move has told", () => {
    const plan = planOf(LET_GO, "Come to a plank.");
    const pause = { id: "p", kind: "pause" as const, seconds: 20, text: "Handles down, drink." };
    const rested = { ...plan, items: plan.items.toSpliced(1, 0, pause) };
    expect(planActs(plan)[1]?.missing).toEqual([{ act: "handles-down", count: 2 }]);
    expect(planActs(rested)[1]?.missing).toEqual([]);
  });
});

test("a move's name tells none of its acts", () => {
  const bear: Change = [{}, { move: "bear" }];
  expect(rowOf(bear, "{move} next, then {next-move}. The bear hold.")).toMatchObject({
    told: [],
    missing: [{ act: "position", position: "quadruped" }],
  });
});

test("there is a row for every move, in order, and none is planned for the first", () => {
  const plan = examplePlan([exampleMove("a"), exampleMove("x", { move: "unknown" }), exampleMove("b")], { moves });
  expect(planActs(plan).map(({ item, planned }) => [item, planned])).toEqual([
    ["a", []],
    ["x", []],
    ["b", []],
  ]);
});
