/** Lines as several coaches would write them, and what each must become. Names, people and lists are invented. */
import { describe, expect, test } from "vitest";
import { NO_ANSWERS } from "#lib/paste/answers.ts";
import { judgeRows } from "#lib/paste/judge.ts";
import { readPaste } from "#lib/paste/read-paste.ts";
import type { Move } from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { judge, judgeOne, made, STUDIO } from "./studio.ts";

/** What a line becomes, with springs only where it names them, since the rest are starting choices. */
function become(line: string): string {
  const row = judgeOne(line);
  const named = row.reading.springs.none || Object.keys(row.reading.springs.counts).length > 0;
  return named ? made(row) : made(row).replaceAll(/ \S+(?= \||$)/g, "");
}

describe("a coach who shortens every word", () => {
  test.each([
    ["kn OH press 60 s 1 light", "overhead-press-kneeling both 60 light1"],
    ["seated o/h pr 45s 1L", "overhead-press-seated both 45 light1"],
    ["Seated OHP 45s", "overhead-press-seated both 45"],
    ["S/A row 60 e/s", "row-single left 60 | row-single right 60"],
    ["SA row 60 each side", "row-single left 60 | row-single right 60"],
    ["s/a row L 45s 1 light", "row-single left 45 light1"],
    ["1 arm row R 45s", "row-single right 45"],
    ["bk ext 45", "prone-extension both 45"],
    ["Bk. ext. 45 s", "prone-extension both 45"],
    ["lat p/d 60s 2 light", "lat-pull-kneeling both 60 light2"],
    ["st arm p/d .75 min 1 light", "straight-arm-pull both 45 light1"],
    ["sa pd 40s", "straight-arm-pull both 40"],
    ["kn bi curl 1:15", "curl-kneeling both 75"],
    ["seated bi curls 45 s one light", "curl-seated both 45 light1"],
    ["tri press fwd 45 s", "triceps-press-forward both 45"],
    ["tri press bk 45 s", "triceps-press-back both 45"],
    ["Tri's press back 45s", "triceps-press-back both 45"],
    ["kn chest pr 45", "chest-press-kneeling both 45"],
    ["calf pr 60s 1 middle", "calf-press-supine both 60 middle1"],
    ["sgl leg pr 45 e/s", "leg-press-single left 45 | leg-press-single right 45"],
    ["S/L leg pr in strap L 45s", "leg-press-strap left 45"],
    ["side plk FA L/R 30s", "side-plank-forearm left 30 | side-plank-forearm right 30"],
    ["FA plk hold 60", "forearm-plank-hold both 60"],
    ["fa plk pike 40s", "forearm-pike both 40"],
    ["rev fly 45s 1 light", "reverse-fly-crossed both 45 light1"],
    ["std upr rw 45s", "upright-row-standing both 45"],
    ["UR 45s", "upright-row-standing both 45"],
    ["trunk rot kn R 55s", "trunk-rotation-kneeling right 55"],
    ["lat lunge 60 e/s", "side-lunge left 60 | side-lunge right 60"],
    ["split sq ea leg 45s", "split-squat left 45 | split-squat right 45"],
    ["opp arm leg 60 e/s", "opposite-reach left 60 | opposite-reach right 60"],
    ["quad press bk 45 e/s", "leg-press-back left 45 | leg-press-back right 45"],
    ["kn diag pull 40s R/L", "diagonal-pull right 40 | diagonal-pull left 40"],
    ["wide pu 30s", "push-up-wide both 30"],
    ["slow press ups 30s", "push-up-slow both 30"],
  ])("%s", (line, expected) => expect(become(line)).toBe(expected));
});

describe("a coach who writes parts of names, in any order", () => {
  test.each([
    ["knee lat pull 60s 1 middle", "lat-pull-kneeling both 60 middle1"],
    ["Lat pulldown 1 min, 2 light", "lat-pull-kneeling both 60 light2"],
    ["straight arm pulldown 45s", "straight-arm-pull both 45"],
    ["chest press kneel 1.5 mins", "chest-press-kneeling both 90"],
    ["chest fly 45s", "fly-kneeling both 45"],
    ["pec fly 45s", "fly-kneeling both 45"],
    ["kneeling chest flyes 45s", "fly-kneeling both 45"],
    ["hip hinge 60 s 1 light", "hinge-standing both 60 light1"],
    ["lean back kneel 45s", "kneeling-lean-back both 45"],
    ["leg curl bridge 45s", "bridge-leg-curl both 45"],
    ["rear fly 45s", "reverse-fly-crossed both 45"],
    ["trunk twist kneeling L 55s", "trunk-rotation-kneeling left 55"],
    ["seated trunk rot ea side 40s", "trunk-rotation-seated left 40 | trunk-rotation-seated right 40"],
    ["single leg press 60 each side", "leg-press-single left 60 | leg-press-single right 60"],
    ["lower legs straps 45s", "leg-lowering-straps both 45"],
    ["back foot sliding lunge 45 e/s", "lunge-back-slide left 45 | lunge-back-slide right 45"],
    ["plank, carriage in & out 40s", "plank-slide both 40"],
    ["squat holding handles 60s", "squat-handles both 60"],
  ])("%s", (line, expected) => expect(become(line)).toBe(expected));
});

describe("times and sides", () => {
  test.each([
    ["Side lunge 60 each side", "side-lunge left 60 | side-lunge right 60"],
    ["Side lunge 60 e/s", "side-lunge left 60 | side-lunge right 60"],
    ["Side lunge 60 ea", "side-lunge left 60 | side-lunge right 60"],
    ["Side lunge 60s ea side", "side-lunge left 60 | side-lunge right 60"],
    ["Side lunge ea. side 60 s", "side-lunge left 60 | side-lunge right 60"],
    ["Side lunge 60 p/s", "side-lunge left 60 | side-lunge right 60"],
    ["Side lunge L/R 60", "side-lunge left 60 | side-lunge right 60"],
    ["Side lunge R/L 60", "side-lunge right 60 | side-lunge left 60"],
    ["Side lunge L then R 45s", "side-lunge left 45 | side-lunge right 45"],
    ["Plank hold .75 min", "plank-hold both 45"],
    ["Plank hold 0.75 min", "plank-hold both 45"],
    ["Plank hold .5 min", "plank-hold both 30"],
    ["Plank hold 1.5 mins", "plank-hold both 90"],
    ["Plank hold 1:15", "plank-hold both 75"],
    ['Plank hold 45"', "plank-hold both 45"],
    ["Plank hold x45", "plank-hold both 45"],
    ["Plank hold x 45", "plank-hold both 45"],
    ["Plank hold ×45", "plank-hold both 45"],
    ["Plank hold x45s", "plank-hold both 45"],
    ["Plank hold x45 2 light", "plank-hold both 45 light2"],
  ])("%s", (line, expected) => expect(become(line)).toBe(expected));

  test("a small number after the sign still counts repetitions, and two rounds are still asked about", () => {
    expect(judgeOne("Kneeling row x12").doubts[0]?.say).toBe(
      "12 repetitions: a plan counts seconds instead. Choose a time.",
    );
    expect(judgeOne("Plank hold x40 reps").doubts[0]?.say).toMatch(/^40 repetitions/);
    expect(judgeOne("Plank hold 30x").doubts[0]?.say).toMatch(/^30 repetitions/);
    expect(judgeOne("Plank hold 45 x 2").doubts).toEqual(
      judgeOne("Plank hold 2 x 45").doubts.map((doubt) => ({ ...doubt, say: doubt.say.replace("2 x 45", "45 x 2") })),
    );
    expect(judgeOne("Plank hold 2x45").doubts[0]?.choices.map((c) => c.label)).toEqual([
      "One item of 90 s",
      "2 items of 45 s",
    ]);
  });
  test("a number without a unit says how it was read", () => {
    expect(judgeOne("Plank hold x45").notes).toContain("“x45” has no unit, so it was read as seconds.");
  });
});

describe("bullets, numbers, tabs and notes", () => {
  test.each([
    ["1) Plank hold 45s", "plank-hold both 45"],
    ["1)Plank hold 45s", "plank-hold both 45"],
    ["12.Plank hold 40", "plank-hold both 40"],
    ["(3) Plank hold 40 s", "plank-hold both 40"],
    ["•Plank hold 40s", "plank-hold both 40"],
    ["-Plank hold 40s", "plank-hold both 40"],
    ["- [ ] Plank hold 40s", "plank-hold both 40"],
    ["*plank hold 40s*", "plank-hold both 40"],
    ["plank hold\t45\t1 light", "plank-hold both 45 light1"],
    ["plank hold\t\t45 s\t\t1 light", "plank-hold both 45 light1"],
    ["2)\tS/A row\t60 e/s\t1 light", "row-single left 60 light1 | row-single right 60 light1"],
    ["-30 s plank hold", "plank-hold both 30"],
    ["1.5 min plank hold", "plank-hold both 90"],
    ["1 - Plank hold 45", "plank-hold both 45"],
    ["60 - plank hold", "plank-hold both 60"],
    ["kneeling chest press w/ 1 middle 45s", "chest-press-kneeling both 45 middle1"],
    ["Row (single arm) 45 e/s", "row-single left 45 | row-single right 45"],
  ])("%s", (line, expected) => expect(become(line)).toBe(expected));

  test.each([
    ["plank pike 60s (slow)", "plank-pike both 60", "slow"],
    ["• Plank hold 45 [knees down if needed]", "plank-hold both 45", "knees down if needed"],
    ["2. plank to pike - 60s - 2 light (ribs in)", "plank-pike both 60 light2", "ribs in"],
    ["kn OH press 45s 1 light (watch ribs)", "overhead-press-kneeling both 45 light1", "watch ribs"],
  ])("%s keeps its note", (line, expected, words) => {
    expect(become(line)).toBe(expected);
    expect(judgeOne(line).words).toBe(words);
  });
});

describe("lists in capitals", () => {
  test("with times, springs and sides", () => {
    const list =
      'KN O/H PRESS 45" 2 LIGHT\nLAT P/D 60S 1 MIDDLE\nS/A ROW 60 E/S 1 LIGHT\nWATER 30S\nPLANK HOLD X45 1 LIGHT';
    expect(judge(list).map(made)).toEqual([
      "overhead-press-kneeling both 45 light2",
      "lat-pull-kneeling both 60 middle1",
      "row-single left 60 light1 | row-single right 60 light1",
      "pause 30 WATER",
      "plank-hold both 45 light1",
    ]);
  });
  test("with names alone: every row in capitals is no list of headings", () => {
    expect(judge("PLANK HOLD\nLAT P/D\nCALF PR").map((row) => row.move)).toEqual([
      "plank-hold",
      "lat-pull-kneeling",
      "calf-press-supine",
    ]);
  });
  test("among other rows, a row in capitals is still a heading", () => {
    expect(made(judge("ARMS\nKneeling row 60 s 1 light")[0] ?? judgeOne(""))).toBe("# ARMS");
  });
});

describe("what may mean two moves is asked", () => {
  const choices = (line: string) => {
    const [doubt] = judgeOne(line).doubts;
    expect(doubt?.about).toBe("move");
    return doubt?.choices.map((c) => c.label);
  };
  test.each([
    ["OH press 60s 1 light", ["Kneeling overhead press", "Seated overhead press"]],
    ["bi curl 45s 1 light", ["Kneeling biceps curl", "Seated biceps curl"]],
    ["chest pr 45 1 light", ["Kneeling chest press", "Chest press on the front bars"]],
    ["SL leg press 45 e/s", ["Supine single-leg press", "Side-lying leg press in the strap"]],
    ["press ups 30s 1 light", ["Slow push-up", "Wide push-up, hands on the bars", "Push-up, knees on the carriage"]],
    ["plank x45", ["Plank hold", "Plank to pike"]],
    ["tri ext 45s 1 light", ["Kneeling triceps press-back", "Kneeling triceps press forward"]],
    ["sq w/ handles 60s", ["Standing squat, holding the handles"]],
    ["kneeling triceps press for 45 s", ["Kneeling triceps press-back", "Kneeling triceps press forward"]],
  ])("%s", (line, some) => expect(choices(line)).toEqual(expect.arrayContaining(some)));

  test.each(["ab 30s", "hip flex 30 s"])("%s names nothing in this library", (line) => {
    expect(judgeOne(line).doubts[0]?.say).toMatch(/is not in the library\. Choose a move, or skip the row\.$/);
  });
});

describe("a studio's own names win", () => {
  const named = (names: Readonly<Record<string, string>>, line: string) => {
    const base = STARTER_MOVES["plank-hold"] as Move;
    const moves = Object.fromEntries(Object.entries(names).map(([id, name]) => [id, { ...base, name }]));
    const context = { ...STUDIO, moves };
    const reading = readPaste(line, context);
    const [row] = reading.ok ? judgeRows(reading.rows, NO_ANSWERS, context) : [];
    return row?.move ?? row?.doubts[0]?.choices.map((c) => c.label).filter((label) => !label.startsWith("A "));
  };
  test.each([
    ["its own short form, whole", { own: "OH press", other: "Overhead press" }, "OH press 30 s", "own"],
    ["its own short form, in part", { own: "Slow SA row, tall", other: "Single-arm row" }, "slow SA row 30 s", "own"],
    ["a word that is also a short form", { own: "Lat raise", other: "Lateral raise" }, "lat raise 30 s", "own"],
    ["a slash of its own", { own: "Roll/reach", other: "Plank hold" }, "Roll/reach 30 s", "own"],
    ["one meaning fits", { ab: "Abdominal curl", row: "Seated row" }, "ab curl 30 s", "ab"],
    ["one meaning fits", { flex: "Hip flexion", hinge: "Hip hinge" }, "hip flex 30 s", "flex"],
    ["one meaning fits", { ext: "Triceps extension", rot: "External rotation" }, "tri ext 30 s", "ext"],
    ["one meaning fits", { ext: "Triceps extension", rot: "External rotation" }, "ext rot 30 s", "rot"],
    [
      "two meanings fit",
      { a: "Single-arm row", b: "Straight-arm row" },
      "S/A row 30 s",
      ["Single-arm row", "Straight-arm row"],
    ],
    [
      "two meanings fit",
      { a: "Hip abduction", b: "Hip abdominal lift" },
      "hip ab 30 s",
      ["Hip abduction", "Hip abdominal lift"],
    ],
    [
      "two meanings fit",
      { a: "Hip flexion", b: "Hip flexor stretch, tall" },
      "hip flex 30 s",
      ["Hip flexion", "Hip flexor stretch, tall"],
    ],
    ["British names", { own: "Centre balance", other: "Plank hold" }, "center balance 30 s", "own"],
    [
      "American names",
      { own: "Centered plank, traveling", other: "Plank hold" },
      "centred plank travelling 30 s",
      "own",
    ],
    ["accents", { own: "Plié squat", other: "Split squat" }, "plie squat 30 s", "own"],
  ])("%s: %s, %s", (_say, names, line, expected) => expect(named(names, line)).toEqual(expected));
});
