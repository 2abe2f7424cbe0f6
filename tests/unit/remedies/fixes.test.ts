/** The act that fixes a finding: afterwards the finding is gone, and nothing locked was changed. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { remedyFor, remedyForAll } from "#lib/remedies/remedies.ts";
import type { Remedy } from "#lib/remedies/remedy.ts";
import { bothSides, exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { RULES } from "#lib/rules/registry.ts";
import { often } from "#tests/support/long.ts";
import { mended } from "#tests/support/mended.ts";
import { damagedPlan, validPlan } from "#tests/support/plan-arbitrary.ts";

function fixOf(plan: Plan, rule: string): Remedy | null {
  const finding = checkPlan(plan).findings.find((f) => f.rule === rule);
  return finding ? remedyFor(plan, finding) : null;
}

/** Carriage home, springs, onto the floor, face the back, stand, take both handles: after a side plank at the front. */
function intoSquat(...lines: string[]): Plan {
  const moves = {
    ...exampleMoves,
    "side-plank": { ...exampleMoves.plank, station: "front" as const, hands: "front-platform" as const },
    "standing-squat": {
      ...exampleMoves.press,
      name: "Standing squat",
      station: "floor" as const,
      position: "standing" as const,
      hands: "handles" as const,
      feet: "floor" as const,
    },
  };
  return examplePlan(
    [
      exampleMove("a", { move: "side-plank", springs: { light: 1 } }),
      exampleMove("b", {
        move: "standing-squat",
        facing: "back",
        springs: { light: 2 },
        script: lines.map((text) => ({ kind: "setup" as const, text })),
      }),
    ],
    { moves },
  );
}
const setupsAfter = (plan: Plan): string[] => {
  const fix = fixOf(plan, "change-not-told");
  const item = fix && mended(plan, fix).items.find(({ id }) => id === "b");
  return item?.kind === "move" ? (item.script ?? []).map(({ text }) => text) : [];
};

const scripts = ({ items }: Plan) => items.map((item) => (item.kind === "move" ? item.script : null));

describe("what a script leaves out", () => {
  const plank = { ...exampleMoves.plank, easier: ["Come down to your knees."] };
  const bare = examplePlan(
    [
      exampleMove("a", { move: "plank", script: [] }),
      exampleMove("b", { script: [] }),
      exampleMove("c", { move: "press", script: [] }),
    ],
    { moves: { ...exampleMoves, plank } },
  );
  it.each(["caution-without-safety-line", "caution-without-easier", "missing-cue"])("%s is said in one act", (rule) => {
    const fix = fixOf(bare, rule);
    expect(fix).not.toBeNull();
    const first = checkPlan(bare).findings.find((f) => f.rule === rule);
    const after = checkPlan(mended(bare, fix as Remedy)).findings;
    expect(after.filter((f) => f.rule === rule && f.items[0] === first?.items[0])).toEqual([]);
  });

  it("is said for all moves at once, and nothing of the rule is left", () => {
    const asked = checkPlan(bare).findings.filter(({ rule }) => rule === "missing-cue");
    expect(asked.length).toBeGreaterThan(1);
    const fix = remedyForAll(bare, asked);
    expect(fix?.label).toBe(`Fix ${asked.length} of ${asked.length}`);
    expect(fixOf(mended(bare, fix as Remedy), "missing-cue")).toBeNull();
  });

  it.each(RULES.map(({ id }) => id))(
    "%s is not written twice when it is taken again before the checks have run",
    (rule) => {
      const findings = checkPlan(bare).findings.filter((finding) => finding.rule === rule);
      for (const finding of findings) {
        const once = mended(bare, remedyFor(bare, finding) ?? { label: "", changes: [] });
        const twice = mended(once, remedyFor(once, finding) ?? { label: "", changes: [] });
        expect(scripts(twice)).toEqual(scripts(once));
      }
    },
  );

  it("fixes taken one after another, before the checks have run, write no line of an item twice", () => {
    const asked = checkPlan(bare).findings;
    const said = asked.reduce((plan, one) => mended(plan, remedyFor(plan, one) ?? { label: "", changes: [] }), bare);
    for (const script of scripts(said)) {
      const lines = (script ?? []).map(({ kind, text }) => `${kind}: ${text}`);
      expect(lines.filter((line, i) => lines.indexOf(line) !== i)).toEqual([]);
    }
  });

  it("takes out the usual words that nothing changes where something does, and no other words", () => {
    const stays = (text: string) =>
      examplePlan([exampleMove("a"), exampleMove("b", { facing: "back", script: [{ kind: "setup", text }] })]);
    const plan = stays("Stay as you are.");
    const fix = fixOf(plan, "says-otherwise");
    const after = mended(plan, fix as Remedy);
    const item = after.items[1];
    expect(item?.kind === "move" && item.script?.map(({ text }) => text)).toEqual(["Face the back."]);
    expect(fixOf(after, "says-otherwise")).toBeNull();
    expect(fixOf(stays("Stay as you are, everybody."), "says-otherwise")).toBeNull();
  });
});

const setup = (text: string) => ({ script: [{ kind: "setup" as const, text }] });

describe("a set-up beside the coach's own", () => {
  it.each<[string[], string[]]>([
    [
      ["Carriage home."],
      ["Carriage home.", "Now on {springs}, onto the floor, face the back, stand, take both handles."],
    ],
    [
      ["Now on two light."],
      ["Carriage home.", "Now on two light.", "Onto the floor, face the back, stand, take both handles."],
    ],
    [
      ["Stand on the floor."],
      ["Carriage home, now on {springs}.", "Stand on the floor.", "Face the back, take both handles."],
    ],
    [
      ["Take both handles."],
      ["Carriage home, now on {springs}, onto the floor, face the back, stand.", "Take both handles."],
    ],
    [
      ["Carriage home.", "Stand tall.", "Take both handles."],
      ["Carriage home.", "Now on {springs}, onto the floor, face the back.", "Stand tall.", "Take both handles."],
    ],
  ])("%j", (own, whole) => {
    expect(setupsAfter(intoSquat(...own))).toEqual(whole);
  });

  it("says before a plank at the platform what comes before it", () => {
    const plank = { ...exampleMoves.plank, station: "front" as const };
    const plan = examplePlan(
      [
        exampleMove("a", { move: "press" }),
        exampleMove("b", { move: "front", springs: { light: 2 }, ...setup("Plank at the front platform.") }),
      ],
      { moves: { ...exampleMoves, front: plank } },
    );
    const fix = fixOf(plan, "change-not-told");
    expect(fix?.label).toMatch(
      /^Say first: Carriage home, put the handles down, now on two light(?:, face the \w+)?\.$/,
    );
  });
});

describe("fixing", () => {
  it.each<[string, Plan, string, Remedy["changes"]]>([
    [
      "uneven-sides",
      examplePlan(bothSides("row", { seconds: 60 })),
      "Make both 60 s",
      [{ itemId: "row-right", field: "seconds", value: 60 }],
    ],
    [
      "uneven-springs-between-sides",
      examplePlan(bothSides("row", {}, { springs: { light: 2 } })),
      "Set the right up like the left",
      [
        { itemId: "row-right", field: "springs", value: { light: 1 } },
        { itemId: "row-right", field: "offsetMm", value: undefined },
      ],
    ],
    [
      "springs-not-there",
      examplePlan([exampleMove("a", { springs: { light: 1, heavy: 3 } })]),
      "Take off one heavy",
      [{ itemId: "a", field: "springs", value: { light: 1, heavy: 2 } }],
    ],
    [
      "transition-too-short",
      examplePlan([exampleMove("a"), exampleMove("b", { springs: { light: 3 }, transitionSeconds: 1 })]),
      "Plan 10 s",
      [{ itemId: "b", field: "transitionSeconds", value: 10 }],
    ],
    [
      "too-short-or-long",
      examplePlan([exampleMove("a", { seconds: 10 })]),
      "Make it 30 s",
      [{ itemId: "a", field: "seconds", value: 30 }],
    ],
    [
      "partial-rep",
      examplePlan([exampleMove("a", { seconds: 42 })]),
      "Make it 40 s",
      [{ itemId: "a", field: "seconds", value: 40 }],
    ],
    [
      "springs-changed-carriage-out",
      examplePlan([exampleMove("a"), exampleMove("b", { springs: { light: 2 }, ...setup("Stand tall.") })]),
      "Say first: Carriage home, now on two light.",
      [{ itemId: "b", field: "firstLine", value: { kind: "setup", text: "Carriage home, now on {springs}." } }],
    ],
    [
      "springs-changed-carriage-out",
      examplePlan([exampleMove("a"), exampleMove("b", { springs: { light: 2 }, ...setup("Two light.") })]),
      "Say first: Carriage home.",
      [{ itemId: "b", field: "firstLine", value: { kind: "setup", text: "Carriage home." } }],
    ],
    [
      "change-not-told",
      examplePlan([
        exampleMove("a"),
        exampleMove("b", {
          move: "row",
          side: "left",
          springs: { light: 2 },
          script: [{ kind: "breath", text: "Out." }],
        }),
      ]),
      "Say first: Carriage home, now on two light, face the back, kneel, left side, take one handle.",
      [
        {
          itemId: "b",
          field: "firstLine",
          value: {
            kind: "setup",
            text: "Carriage home, now on {springs}, face the back, kneel, {side} side, take one handle.",
          },
        },
      ],
    ],
    [
      "hand-or-foot-not-free",
      examplePlan([
        exampleMove("a", { move: "press" }),
        exampleMove("b", { move: "plank", ...setup("Come to a plank.") }),
      ]),
      "Say first: Put the handles down.",
      [{ itemId: "b", field: "firstLine", value: { kind: "setup", text: "Put the handles down." } }],
    ],
    [
      "change-not-told",
      examplePlan([
        exampleMove("a"),
        exampleMove("b", { facing: "back", springs: { light: 2 }, ...setup("Carriage home. Two light.") }),
      ]),
      "Say after it: Face the back.",
      [{ itemId: "b", field: "setupEnd", value: { kind: "setup", text: "Face the back." } }],
    ],
    [
      "start-place-not-told",
      examplePlan([exampleMove("a"), exampleMove("b", { offsetMm: 80 })]),
      "Say first: 8 cm further from the anchor.",
      [{ itemId: "b", field: "firstLine", value: { kind: "setup", text: "8 cm further from the anchor." } }],
    ],
    [
      "setup-line-twice",
      examplePlan([
        exampleMove("a", {
          script: [
            { kind: "setup", text: "{springs}." },
            { kind: "setup", text: "{springs}. " },
          ],
        }),
      ]),
      "Take one of them out",
      [{ itemId: "a", field: "lineTwice", value: { kind: "setup", text: "{springs}." } }],
    ],
    [
      "hand-or-foot-not-free",
      examplePlan([
        exampleMove("a", { move: "press" }),
        exampleMove("b", { move: "plank", transitionSeconds: 0, ...setup("Handles down.") }),
      ]),
      "Plan 7 s",
      [{ itemId: "b", field: "transitionSeconds", value: 7 }],
    ],
    [
      // Three light at mid-travel: 3 x (10 + 0.12 x 250) = 120 N. Two: 20 + 0.24 (250 + p) = 120 at p = 167 mm.
      "change-could-be-avoided",
      examplePlan(
        [
          exampleMove("a", { move: "row", side: "left", springs: { light: 2 } }),
          exampleMove("b", { move: "row", side: "left", springs: { light: 3 } }),
          exampleMove("c", { move: "row", side: "left", springs: { light: 2 } }),
        ],
        { moves: { row: { ...exampleMoves.row, springs: { max: { light: 3 } } } } },
      ),
      "Keep two light, 17 cm further",
      [
        { itemId: "b", field: "springs", value: { light: 2 } },
        { itemId: "b", field: "offsetMm", value: 170 },
      ],
    ],
  ])("%s", (rule, plan, label, changes) => {
    const fix = fixOf(plan, rule);
    expect(fix).toEqual({ label, changes });
    if (fix) expect(checkPlan(mended(plan, fix)).findings.map((f) => f.rule)).not.toContain(rule);
  });

  it("changes the side that is not locked, and nothing when both are", () => {
    const locked = bothSides("row", { seconds: 60 }, { seconds: 45, locked: true });
    expect(fixOf(examplePlan(locked), "uneven-sides")).toEqual({
      label: "Make both 45 s",
      changes: [{ itemId: "row-left", field: "seconds", value: 45 }],
    });
    const both = bothSides("row", { seconds: 60, locked: true }, { seconds: 45, locked: true });
    expect(fixOf(examplePlan(both), "uneven-sides")).toBeNull();
  });

  it("offers nothing where nothing is obvious", () => {
    expect(fixOf(examplePlan(bothSides("row").slice(0, 1)), "missing-side")).toBeNull();
    expect(fixOf(examplePlan([exampleMove("a", { springs: { medium: 1 } })]), "springs-not-there")).toBeNull();
  });

  it("always fixes what it offers to fix", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        for (const rule of RULES) {
          for (const finding of checkPlan(plan, [rule]).findings) {
            const fix = remedyFor(plan, finding);
            if (!fix) continue;
            const left = checkPlan(mended(plan, fix), [rule]).findings.map((f) => f.key);
            expect(left, `${finding.message} ${fix.label}`).not.toContain(finding.key);
          }
        }
      }),
      { seed: 71, numRuns: often(20, 300) },
    );
  }, 120_000);

  it("never throws, whatever the plan and however old the finding", () => {
    fc.assert(
      fc.property(validPlan, damagedPlan, (before, now) => {
        for (const finding of checkPlan(before).findings) remedyFor(now, finding);
        for (const finding of checkPlan(now).findings) remedyFor(now, finding);
      }),
      { seed: 72, numRuns: often(20, 200) },
    );
  }, 120_000);
});
