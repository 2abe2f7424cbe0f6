/** What rows become: sure readings go on, doubts are sentences with choices, answers settle them. */
import { describe, expect, test } from "vitest";
import { NO_ANSWERS, type PasteAnswer, withAnswer } from "#lib/paste/answers.ts";
import { draftsToItems } from "#lib/paste/drafts.ts";
import { countsWords } from "#lib/paste/judge.ts";
import type { JudgedRow } from "#lib/paste/judged.ts";
import { itemSchema } from "#lib/plan/schema.ts";
import { judge, judgeOne, made, read } from "./studio.ts";

const doubts = (text: string) => judgeOne(text).doubts.map((d) => `${d.about}: ${d.say}`);
const labels = (text: string) => judgeOne(text).doubts.map((d) => d.choices.map((c) => c.label));

/** The row once its doubts are answered by these choices, one after the other. */
function answered(text: string, choices: readonly string[]) {
  let answers = NO_ANSWERS;
  for (const label of choices) {
    const row = judgeOne(text, answers);
    const choice = row.doubts.flatMap((d) => d.choices).find((c) => c.label === label);
    if (!choice) throw new Error(`no choice ${label} among ${JSON.stringify(row.doubts)}`);
    answers = withAnswer(answers, row.reading.key, choice.answer);
  }
  return judgeOne(text, answers);
}

describe("a row that names everything", () => {
  test.each([
    ["Plank to pike  60 s  2 light", "plank-pike both 60 light2"],
    ["1. Kneeling row 60 s 1 light", "row-kneeling both 60 light1"],
    ["Lunge, back foot sliding L 45 s 2 light", "lunge-back-slide left 45 light2"],
    [
      "Kneeling side bend each side 40 s light",
      "side-bend-kneeling left 40 light1 | side-bend-kneeling right 40 light1",
    ],
    ["Kneeling side bend R/L 40 s light", "side-bend-kneeling right 40 light1 | side-bend-kneeling left 40 light1"],
    ["Split squat both sides 45 s 1 light", "split-squat left 45 light1 | split-squat right 45 light1"],
    ["Split squat left 45 s right 45 s 1 light", "split-squat left 45 light1 | split-squat right 45 light1"],
    ["Plank hold 30 s no springs", "plank-hold both 30 none"],
    ["Water break 20 s", "pause 20 Water break"],
    ["Shake out the arms, drink 40 s", "pause 40 Shake out the arms, drink"],
    ["## Warm up", "# Warm up"],
    ["Arms:", "# Arms"],
    ["ARMS AND BACK", "# ARMS AND BACK"],
  ])("%s", (text, items) => {
    expect(made(judgeOne(text))).toBe(items);
  });
});

describe("what a row does not name gets the starting choice, marked as such", () => {
  test("springs", () => {
    expect(judgeOne("Kneeling row 60 s")).toMatchObject({
      state: "ready",
      starting: { seconds: false, springs: true },
    });
  });
  test("seconds", () => {
    expect(judgeOne("Kneeling row 1 light")).toMatchObject({
      seconds: 60,
      starting: { seconds: true, springs: false },
    });
  });
  test("a pause", () => {
    expect(judgeOne("Water break")).toMatchObject({ seconds: 30, starting: { seconds: true } });
  });
});

describe("each doubt is a sentence", () => {
  test.each([
    ["Jumping jacks 30 s", "move: “Jumping jacks” is not in the library. Choose a move, or skip the row."],
    ["Leg press 60 s 1 firm", "move: “Leg press” could be one of several moves. Choose which one."],
    [
      "Squat 60 s 1 light",
      "move: “Squat” is not in the library, but one move has a similar name. Choose it, or skip the row.",
    ],
    ["Kneeling row 45-60 s 1 light", "time: From 45 to 60 s: a plan needs one length. Choose it."],
    ["Kneeling row 10 reps 1 light", "time: 10 repetitions: a plan counts seconds instead. Choose a time."],
    ["Kneeling row 8 1 light", "time: “8” has no unit. Is it seconds, minutes or repetitions?"],
    ["Kneeling row 12:30 1 light", "time: “12:30” is long for one item. Choose what was meant."],
    ["Kneeling row 60 s 15 s 1 light", "time: This row has several times: 60 s, 15 s. Choose one."],
    ["Kneeling row 0 s 1 light", "time: “0 s” is not a length an item can have. Choose or type another."],
    ["Side lunge 2x45 s 1 light", "time: Does “2x45 s” mean two sides, two rounds, or one item?"],
    ["Kneeling row 2x45 s 1 light", "time: Does “2x45 s” mean two rounds, or one item?"],
    [
      "Side lunge 45 s 1 light",
      "side: Side lunge is done on one side at a time, but the row names no side. Choose one.",
    ],
    [
      "Kneeling row left 45 s 1 light",
      "side: Kneeling row is done with both sides at once, but the row says “left”. Choose a side.",
    ],
    ["Side lunge left, knee right 45 s 1 light", "side: The row names more than one side: left; right. Choose one."],
    ["Kneeling row 45 s 2 blue", "springs: “blue” is not a spring of this room. Choose the one it means."],
    ["Kneeling row 45 s 2 springs", "springs: Two springs are on, but the row does not say which. Choose them."],
    ["Kneeling row 45 s 6 light", "springs: Six light asked for, but this room has 4."],
    ["Kneeling row 1 M", "springs: “1 M” could be a spring or a time. Choose which."],
    ["Kneeling row 45 s 1 light no springs", "springs: The row says both “no springs” and one light. Choose one."],
    [
      "Repeat other side",
      "kind: This row repeats something, but a plan lists every item. Choose the item, or skip the row.",
    ],
    [
      "=SUM(B2:B9)",
      "kind: A cell holds a formula or an error instead of a value. Choose a move for this row, or skip it.",
    ],
    ["60 s", "move: This row names no move. Choose one, or skip it."],
    [
      "Opening 60 s",
      "move: “Opening” is not in the library. Opening and closing are not items: set their time in the class itself, and skip this row.",
    ],
  ])("%s", (text, doubt) => {
    expect(doubts(text)).toEqual([doubt]);
    expect(judgeOne(text)).toMatchObject({ state: "doubt", drafts: [] });
  });

  test("a row may have several doubts", () => {
    expect(judgeOne("Side lunge 45-60 s 2 blue").doubts.map((d) => d.about)).toEqual(["side", "time", "springs"]);
  });

  test("a misspelt name that is still taken is reported", () => {
    expect(judgeOne("Kneling chest press 60 s 1 light").notes).toEqual([
      "“Kneling chest press” was read as Kneeling chest press.",
    ]);
    expect(judgeOne("Calf press 60 s 1 firm").notes.join()).toContain("the only move with all these words");
    expect(judgeOne("Kneeling row 90 1 light").notes).toEqual(["“90” has no unit, so it was read as seconds."]);
  });

  test("a total is skipped, with the reason", () => {
    expect(judgeOne("Total 25:00")).toMatchObject({ state: "skipped", notes: [expect.stringContaining("total")] });
  });
});

describe("an answer settles a doubt", () => {
  test.each([
    ["Leg press 60 s 1 firm", ["Supine leg press"], "leg-press-supine both 60 firm1"],
    ["Jumping jacks 30 s", ["A pause"], "pause 30 Jumping jacks"],
    ["Jumping jacks 30 s", ["A heading"], "# Jumping jacks"],
    ["Kneeling row 45-60 s 1 light", ["60 s"], "row-kneeling both 60 light1"],
    ["Kneeling row 10 reps 1 light", ["50 s: 10 repetitions of 5 s"], "row-kneeling both 50 light1"],
    [
      "Side lunge 2x45 s 1 light",
      ["Left and right, 45 s each"],
      "side-lunge left 45 light1 | side-lunge right 45 light1",
    ],
    ["Kneeling row 2x45 s 1 light", ["2 items of 45 s"], "row-kneeling both 45 light1 | row-kneeling both 45 light1"],
    ["Side lunge 45-60 s 2 blue", ["Right", "45 s", "“blue” is middle"], "side-lunge right 45 middle2"],
    ["Kneeling row 45 s 2 springs", ["Two light"], "row-kneeling both 45 light2"],
    ["Kneeling row 45 s 6 light", ["Four light"], "row-kneeling both 45 light4"],
    ["Kneeling row 1 M", ["One middle"], "row-kneeling both 60 middle1"],
  ])("%s: %j", (text, choices, items) => {
    expect(made(answered(text, choices))).toBe(items);
  });

  test("a row can be skipped and brought back", () => {
    const { key } = read("Jumping jacks 30 s").rows[0] ?? { key: "" };
    const skipped = withAnswer(NO_ANSWERS, key, { row: { skip: true } });
    expect(judgeOne("Jumping jacks 30 s", skipped)).toMatchObject({ state: "skipped", doubts: [] });
    expect(judgeOne("Jumping jacks 30 s", withAnswer(skipped, key, { row: { skip: false } })).state).toBe("doubt");
  });

  test("a spring explained once is explained in every row", () => {
    const answer: PasteAnswer = { spring: { word: "blue", id: "middle" } };
    const rows = judge("Kneeling row 60 s 1 blue\nPlank hold 30 s 2 blue", withAnswer(NO_ANSWERS, "", answer));
    expect(rows.map(made)).toEqual(["row-kneeling both 60 middle1", "plank-hold both 30 middle2"]);
  });

  test("a name chosen once is chosen in every row of that name", () => {
    const text = "Leg press 60 s 1 firm\nleg-press 30 s 1 strong";
    const choice = judge(text)[0]?.doubts[0]?.choices[0];
    const rows = judge(text, withAnswer(NO_ANSWERS, read(text).rows[0]?.key ?? "", choice?.answer ?? {}));
    expect(rows.map(made)).toEqual(["leg-press-supine both 60 firm1", "leg-press-supine both 30 strong1"]);
  });

  test("an answer stays with its row, not with a neighbour, while other rows are typed before it", () => {
    const key = read("Side lunge 45 s 1 light").rows[0]?.key ?? "";
    const answers = withAnswer(NO_ANSWERS, key, { row: { side: "left" } });
    const rows = judge("Plank hold 30 s 1 light\nSide lunge 45 s 1 light\nSide lunge 45 s 1 light", answers);
    expect(rows.map((r) => r.state)).toEqual(["ready", "ready", "doubt"]);
  });
});

describe("the other side of the row before", () => {
  const LIST = "Side lunge left 45 s 1 light\nrepeat other side";
  test("is offered by name and made from that row", () => {
    const rows = judge(LIST);
    const choice = rows[1]?.doubts[0]?.choices[0];
    expect(choice?.label).toBe("Side lunge, right, like the row before");
    const answers = withAnswer(NO_ANSWERS, rows[1]?.reading.key ?? "", choice?.answer ?? {});
    expect(judge(LIST, answers).map(made)).toEqual(["side-lunge left 45 light1", "side-lunge right 45 light1"]);
    expect(judge(`${LIST} 50 s`, answers)[1]?.state).toBe("doubt");
  });
  test("is not offered when the row before has no side", () => {
    expect(judge("Kneeling row 45 s 1 light\nrepeat other side")[1]?.doubts[0]?.choices).toEqual([]);
  });
});

describe("a heading or a move", () => {
  test("capitals mean nothing in a list written in capitals", () => {
    const rows = judge("PLANK HOLD 30 S 1 LIGHT\nKNEELING ROW 60 S 1 LIGHT\nSPLIT SQUAT L 45 S 1 LIGHT");
    expect(rows.map((r) => r.kind)).toEqual(["move", "move", "move"]);
  });
  test("a name in capitals among others is in doubt", () => {
    const rows = judge("PLANK HOLD\nKneeling row 60 s 1 light\nSplit squat L 45 s 1 light");
    expect(rows[0]?.doubts[0]?.say).toBe("“PLANK HOLD” looks like a heading but is also a move. Choose which it is.");
  });
  test("among rows with times, a row with neither time nor move is read as a heading, with a note", () => {
    const [row] = judge("Lower body\nKneeling row 60 s 1 light\nPlank hold 30 s 1 light");
    expect([made(row as JudgedRow), row?.notes]).toEqual([
      "# Lower body",
      ["It has no time and no move has this name, so it is read as a heading."],
    ]);
  });
  test("the time of a heading is left out, with a note", () => {
    expect(judgeOne("ARMS 10 min").notes).toEqual(["A heading takes no time, so its 10 min are left out."]);
  });
});

describe("words left over", () => {
  test("are shown, and become a form line only when a person says so", () => {
    const row = judgeOne("Kneeling row 60 s 1 light, elbows {close}");
    expect(row).toMatchObject({ words: "elbows, close", keepWords: false });
    expect(row.drafts).toMatchObject([{ kind: "move" }]);
    expect(row.drafts[0]).not.toHaveProperty("script");
    const kept = judgeOne(
      "Kneeling row 60 s 1 light, elbows close",
      withAnswer(NO_ANSWERS, read("Kneeling row 60 s 1 light, elbows close").rows[0]?.key ?? "", {
        row: { keepWords: true },
      }),
    );
    expect(kept.drafts).toMatchObject([{ script: [{ kind: "form", text: "elbows close" }] }]);
  });
  test("from a notes column are kept unless a person says no", () => {
    const [row] = judge("Move\tTime\tSprings\tNotes\nKneeling row\t60\t1 light\t{next-move} soon");
    expect(row?.keepWords).toBe(true);
    const [item] = draftsToItems(row?.drafts ?? [], () => "a");
    expect(item).toMatchObject({ script: [{ text: "next-move, soon" }] });
    expect(itemSchema.safeParse(item).success).toBe(true);
  });
  test("from a longer name are not lost", () => {
    expect(answered("Kneeling row elbows close 60 s 1 light", ["Kneeling row"]).words).toBe("elbows close");
  });
});

test("a move facing a side wall turns round for the other side", () => {
  const facing = judgeOne("Side lunge L/R 45 s 1 light").drafts.map((d) => ("facing" in d ? d.facing : undefined));
  expect(facing).toEqual([undefined, "right"]);
  expect(judgeOne("Seated row facing front 60 s 1 light").drafts).toMatchObject([{ facing: "front" }]);
  expect(judgeOne("Seated row 60 s 1 light sit 10 cm further").drafts).toMatchObject([{ offsetMm: 100 }]);
});

test("every doubt that a choice can answer offers choices", () => {
  expect(labels("Side lunge 45 s 1 light")).toEqual([["Left and right", "Left", "Right", "Alternating"]]);
  expect(labels("Leg press 60 s 1 firm")[0]).toEqual(
    expect.arrayContaining(["Supine leg press", "Supine single-leg press"]),
  );
});

test("the counts are worded", () => {
  const rows = judge("Plank hold 30 s 1 light\nJumping jacks 30 s\nSide lunge 45-60 s\nTotal 2:00");
  expect(countsWords(rows)).toBe("1 row ready, 3 doubts, 1 skipped");
});
