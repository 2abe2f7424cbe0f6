/** The rows of the crew sheet: worked by hand from the sample class. */
import { expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { type CrewMove, crewRows } from "#lib/card/crew-sheet.ts";
import { sheetRows } from "#lib/card/sheet.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { samplePlan } from "./sample-plan.ts";

const cardOf = (plan: Plan) =>
  buildCard({
    studio: { name: "Tholepin Strength", town: "Port Ellery" },
    planId: "rows",
    number: 1,
    room: { id: "harbour", name: "Harbour room" },
    plan,
    issuedAt: 0,
    expiresAt: 1,
  });
const card = cardOf(samplePlan());
const moves = (plan = card) => crewRows(plan).filter((row): row is CrewMove => row.kind === "move");

test("has the same rows and numbers as the wall sheet", () => {
  const short = (rows: readonly { kind: string; id: string; title: string }[]) =>
    rows.map(({ kind, id, title }) => [kind, id, title]);
  expect(short(crewRows(card))).toEqual(short(sheetRows(card)));
  expect(moves().map(({ number }) => number)).toEqual([1, 2, 3]);
});

test("says when, which way people face, what changes with the springs, and the crew's lines", () => {
  const [pike, left, right] = moves();
  expect(pike).toMatchObject({ at: 30, start: 30, seconds: 60, facing: "front", turns: true, side: null });
  expect(pike?.lines).toEqual(["Camera two, low and wide."]);
  expect(left).toMatchObject({ at: 110, start: 130, facing: "back", turns: true, side: "left", newSprings: true });
  expect(left?.changes.map(({ words }) => words)).toEqual([
    "carriage home",
    "take off one light",
    "put on one heavy",
    "face the back",
    "kneel",
    "feet on the carriage",
    "take one handle",
  ]);
  expect(right).toMatchObject({ at: 175, start: 180, turns: false, newSprings: false, lines: [] });
  expect(right?.changes.map(({ words }) => words)).toEqual(["put the handle down", "handle in the other hand"]);
});

test("an item's own facing wins, and crew lines have their live fields filled in as of the start of the work", () => {
  const plan = samplePlan();
  const items = plan.items.map((item) =>
    item.id === "row-left"
      ? ({
          ...(item as MoveItem), // of that id
          facing: "left",
          script: [{ kind: "crew", text: "{seconds-left} seconds of {move}, then {next-move}." }],
        } satisfies MoveItem)
      : item,
  );
  const left = moves(cardOf({ ...plan, items }))[1];
  expect(left).toMatchObject({ facing: "left", turns: true });
  expect(left?.lines).toEqual(["Forty five seconds of Kneeling one-arm row, then Kneeling one-arm row."]);
});

test("talk is the sum of the cue track's lines; silence is the longest gap of fifteen seconds or more", () => {
  // Pike, 30 to 90: start, breath and form are spread before the heads-up at 75, so no silence is long.
  const [pike, , right] = moves();
  expect(pike?.voice).toEqual({ seconds: 11.2, quiet: null });
  // The row on the right, 180 to 225: start 180-182.2, heads-up 210-211.5, count-in 222-225.
  expect(right?.voice).toEqual({ seconds: 6.7, quiet: { from: 182.2, to: 210 } });
  const pause = crewRows(card).find((row) => row.kind === "pause");
  expect(pause).toMatchObject({ at: 90, seconds: 20, voice: { seconds: 0, quiet: { from: 90, to: 110 } } });
});
