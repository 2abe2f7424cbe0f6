/** Which act of a change is shown largest: the one being said, then the check of the springs. */
import { describe, expect, test } from "vitest";
import { actParts, type SetupChange } from "#lib/cues/changes.ts";
import { openActAt } from "#lib/floor/open-act.ts";

const act = (kind: SetupChange["kind"], words: string): SetupChange => ({ kind, words });
const ACTS = [act("carriage", "carriage home"), act("spring-off", "take off one light"), act("body", "face the back")];
const CHANGE = { from: 100, to: 120 };
const SAID = [{ from: 102, to: 108 }];
const open = (at: number, lines = SAID, change = CHANGE) => openActAt(ACTS, lines, change, at);

describe("with a set-up line", () => {
  test("the first act is open until it is said, and the acts follow each other while the line is read", () => {
    expect([open(100), open(102), open(102.5)]).toEqual([0, 0, 0]);
    const opened = [102, 103, 104, 105, 106, 107, 107.9].map((at) => open(at));
    expect(opened).toEqual([...opened].sort((a, b) => a - b));
    expect(new Set(opened)).toEqual(new Set([0, 1, 2]));
  });

  test("the last act stays open until the last five seconds, in which the springs are checked", () => {
    expect([open(108.1), open(114.9)]).toEqual([2, 2]);
    expect([open(115), open(119.9)]).toEqual([3, 3]);
  });

  test("a line that is still being said keeps its act; a short change has a short check", () => {
    expect(open(118, [{ from: 102, to: 119 }])).toBe(2);
    expect([
      open(103.9, [{ from: 100, to: 103 }], { from: 100, to: 106 }),
      open(104, [], { from: 100, to: 106 }),
    ]).toEqual([2, 3]);
  });
});

test("without a line the acts share the first part of the change", () => {
  const opened = [100, 103, 106, 109, 112, 114].map((at) => open(at, []));
  expect(new Set(opened)).toEqual(new Set([0, 1, 2]));
  expect(open(116, [])).toBe(3);
});

test("what to do is set off from the rest, and together they are the words of the act", () => {
  expect(actParts(act("spring-on", "put on one light and two firm"))).toEqual(["put on", "one light and two firm"]);
  expect(actParts(act("stay", "springs stay"))).toEqual(["springs stay", ""]);
  expect(actParts(act("side", "left side"))).toEqual(["left side", ""]);
  for (const one of ACTS) expect(actParts(one).filter(Boolean).join(" ")).toBe(one.words);
});
