/** What crew and demonstrator read, on a class worked by hand: opening 0-30, pike 30-90, pause -110, change -130, left -175. */
import { expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { floorNow } from "#lib/floor/now.ts";
import { crewSheet } from "#lib/line/crew.ts";
import { EMPTY_LINE } from "#lib/line/line.ts";
import { followWords } from "#lib/line/line-words.ts";
import { setupWords } from "#lib/line/setup-words.ts";
import { samplePlan } from "../card/sample-plan.ts";

const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 1,
  room: { id: "harbour", name: "Harbour room" },
  plan: samplePlan(),
  issuedAt: 0,
  expiresAt: 86_400_000,
});
const at = (position: number) => crewSheet(floorNow(card, []), position);

test("a crew line is due from the start to the end of its move", () => {
  const text = "Camera two, low and wide.";
  expect(at(10).next).toMatchObject([{ item: "pike-1", text, inSeconds: 20 }]);
  expect(at(10).now).toEqual([]);
  expect(at(30).now).toMatchObject([{ text, inSeconds: 0 }]);
  expect(at(89).now).toHaveLength(1);
  expect([at(90).now, at(90).next]).toEqual([[], []]);
});

test("the next change begins when the current work ends; during a change, after the work that follows", () => {
  expect([10, 40, 100, 115, 140, 174].map((s) => at(s).changeIn)).toEqual([20, 50, 10, 60, 35, 1]);
  // Nothing comes after the closing.
  expect(at(230).changeIn).toBeNull();
});

test("who speaks, and for how long, comes from the cue track", () => {
  const [first] = card.cues;
  if (!first) throw new Error("the class has lines");
  expect(at(first.from - 2).voice).toEqual({ speaks: false, seconds: 2 });
  expect(at((first.from + first.to) / 2).voice.speaks).toBe(true);
  expect(at(card.clock.total).voice).toEqual({ speaks: false, seconds: null });
});

test("a set-up in words", () => {
  expect(setupWords(card.plan, "row-left")).toEqual({
    body: "kneeling, on the carriage",
    facing: "the back",
    hands: "one handle",
    feet: "on the carriage",
  });
  for (const id of ["rest", "trunk", "constructor", null]) expect(setupWords(card.plan, id)).toBeNull();
});

test("how many screens follow, and which lost contact", () => {
  const screen = (id: string, goneSince: number | null) => ({
    id,
    label: `The ${id}`,
    view: "wall" as const,
    goneSince,
  });
  const line = { ...EMPTY_LINE, screens: [screen("wall", null), screen("crew", 5), { ...screen("me", null) }] };
  expect(followWords(line, "me")).toBe("1 screen follows, lost: The crew");
  expect(followWords({ ...line, screens: [] }, "me")).toBe("");
});
