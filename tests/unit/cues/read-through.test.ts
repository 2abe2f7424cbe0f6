/** The words of a class as one text: nothing lost, in order of time, each line next to its script neighbours. */
import { describe, expect, test } from "vitest";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { keepSameParts, type ReadLine, readThrough } from "#lib/cues/read-through.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { longClass } from "#tests/support/long-class.ts";
import { samplePlan } from "../card/sample-plan.ts";

function withLeft(change: Partial<MoveItem>): Plan {
  const plan = samplePlan();
  const items = plan.items.map((i) => (i.id === "row-left" && i.kind === "move" ? { ...i, ...change } : i));
  return { ...plan, items };
}
const linesOf = (plan: Plan): ReadLine[] => readThrough(plan).parts.flatMap((part) => part.lines);
const partsNamed = (plan: Plan) =>
  readThrough(plan).parts.map(({ item, again }) => (again ? `${item.id} again` : item.id));

describe("the read-through", () => {
  test("has every item in order, headings and pauses before the words that follow them", () => {
    expect(partsNamed(samplePlan())).toEqual(samplePlan().items.map((item) => item.id));
  });

  test("says what the cue track says, in its order, with the fields filled in", () => {
    for (const plan of [samplePlan(), longClass(60, 400)]) {
      const said = linesOf(plan).filter((line) => line.at !== null);
      expect(said.map(({ at, kind, text }) => [at, kind, text])).toEqual(
        cueTrack(plan).cues.map(({ from, kind, text }) => [from, kind, text]),
      );
    }
  });

  test("shows every line of every script once, also crew lines and lines set aside", () => {
    const plan = longClass(60, 400);
    const written = plan.items.flatMap((item) =>
      item.kind === "move" ? (item.script ?? []).map((_, n) => `${item.id} ${n}`) : [],
    );
    const shown = linesOf(plan).flatMap((line) => (line.line === null ? [] : [line.key]));
    expect([...shown].sort()).toEqual([...written].sort());
    const { talk, crew } = readThrough(plan);
    const { said, aside } = talk;
    expect(aside).toBe(cueTrack(plan).dropped.length);
    expect(said + aside + crew).toBe(linesOf(plan).length);
  });

  test("puts a line set aside after the words it was written after, with the seconds it is short of", () => {
    const long = "Keep the ribs heavy and the neck long while the arm draws back. ".repeat(15);
    const plan = withLeft({
      script: [
        { kind: "setup", text: "One heavy, kneel." },
        { kind: "start", text: "Pull." },
        { kind: "form", text: long },
        { kind: "crew", text: "Wide, {side} arm." },
      ],
    });
    const lines = linesOf(plan).filter((line) => line.key.startsWith("row-left "));
    const at = lines.findIndex((line) => line.kind === "form");
    expect(lines[at - 1]?.kind).toBe("start");
    expect(lines[at]).toMatchObject({ at: null, line: 2 });
    expect(lines[at]?.shortBy).toBe(cueTrack(plan).dropped[0]?.shortBy);
    expect(lines[at + 1]).toMatchObject({ kind: "crew", text: "Wide, left arm.", at: null, shortBy: null, line: 3 });
    expect(readThrough(plan)).toMatchObject({ talk: { aside: 1, shortBy: lines[at]?.shortBy } });
  });

  test("says when an item's words go on after the next one's began", () => {
    const plan = samplePlan();
    const items = plan.items.map((i): typeof i => {
      if (i.kind !== "move" || i.id !== "row-right") return i;
      const text = "Turn to the other side, bring the handle over and kneel tall before anything moves at all, please.";
      return { ...i, transitionSeconds: 2, script: [{ kind: "setup", text }] };
    });
    expect(partsNamed({ ...plan, items })).toContain("row-left again");
  });

  test("keeps the same object for an unchanged part", () => {
    const before = readThrough(samplePlan()).parts;
    const after = keepSameParts(readThrough(withLeft({ script: [] })).parts, before);
    const same = after.filter((part) => before.includes(part)).map((part) => part.item.id);
    expect(same).toContain("pike-1");
    expect(same).not.toContain("row-left");
  });
});
