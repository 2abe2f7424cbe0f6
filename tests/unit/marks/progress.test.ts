/** What a person's rounds and marks say over time. The expected values are worked out by hand. */
import { describe, expect, it } from "vitest";
import {
  fixedUnasked,
  type RoundText,
  returningFindings,
  type SaidByThen,
  type TextThen,
} from "#lib/progress/findings.ts";
import { markSeries } from "#lib/progress/series.ts";
import { taughtAgainstPlan } from "#lib/progress/taught.ts";
import { faultOfLevels, type Levels, rubricSchema, STARTER_RUBRIC } from "#lib/rubric/rubric.ts";
import type { Finding } from "#lib/rules/define/types.ts";

const finding = (rule: string, item: string, level: Finding["level"] = "look"): Finding => ({
  ...{ rule, level, items: [item], message: `${rule} at ${item}`, values: {}, key: `${rule}:${item}` },
});
const nobody: SaidByThen = { items: new Set(), rules: new Set(), words: [] };
/** Moves with names of their own. */
const having = (...items: string[]): TextThen => ({
  items: new Map(items.map((id) => [id, `move ${id}`])),
  ground: "as ever",
});
const text = (
  planId: string,
  round: number,
  kind: RoundText["kind"],
  findings: Finding[],
  asked = nobody,
  then: TextThen | null = having("m1", "m2", "m3", "m4"),
): RoundText => ({
  ...{ planId, round, kind, findings, asked, text: then },
  at: round * 10 + (kind === "offered" ? 0 : 1) + planId.charCodeAt(0) * 1000,
});

describe("findings that return", () => {
  it("counts plans as they were first offered, not rounds, and leaves out what is for information", () => {
    const found = returningFindings([
      text("a", 1, "offered", [
        finding("uneven-sides", "m1"),
        finding("uneven-sides", "m2"),
        finding("info-only", "m1", "info"),
      ]),
      text("a", 2, "offered", [finding("late-breath", "m1")]),
      text("b", 1, "offered", [
        finding("uneven-sides", "m9"),
        finding("info-only", "m1", "info"),
        finding("late-breath", "m2"),
      ]),
      text("c", 1, "offered", []),
    ]);
    expect(found).toEqual([
      {
        rule: "uneven-sides",
        of: 3,
        plans: [
          { planId: "b", at: 98_010, count: 1 },
          { planId: "a", at: 97_010, count: 2 },
        ],
      },
    ]);
  });
});

describe("fixed without being asked", () => {
  const before = [
    finding("uneven-sides", "m1"),
    finding("uneven-sides", "m2"),
    finding("late-breath", "m3"),
    finding("stays", "m4"),
  ];
  const wholeClass: Finding = { ...finding("too-long", "m1"), items: [] };
  const fixed = (asked: Partial<SaidByThen>, then?: TextThen | null, found: Finding[] = before) =>
    fixedUnasked([
      text("a", 1, "offered", found),
      text("a", 1, "returned", found),
      text("a", 2, "offered", [finding("stays", "m4")], { ...nobody, ...asked }, then),
    ]);

  it("is what was gone in the next offer and nothing was said or proposed about", () => {
    const found = fixed({ items: new Set(["m2"]), rules: new Set(["late-breath"]) });
    expect(found).toEqual([{ planId: "a", round: 2, at: 97_020, messages: ["uneven-sides at m1"] }]);
  });

  it("is not what went with its move", () => {
    expect(fixed({}, having("m1", "m4"))[0]?.messages).toEqual(["uneven-sides at m1"]);
  });

  it("is not what a main point names, and nothing where a main point may have meant anything", () => {
    expect(fixed({ words: ["Even out Move M1 and move m3."] })[0]?.messages).toEqual(["uneven-sides at m2"]);
    expect(fixed({ words: ["Move m1: both sides.", "Breathe everywhere."] })).toEqual([]);
  });

  it("of the whole class is told only where nobody said anything", () => {
    expect(fixed({}, undefined, [wholeClass])[0]?.messages).toEqual([wholeClass.message]);
    expect(fixed({ words: ["Move m1: both sides."] }, undefined, [wholeClass])).toEqual([]);
  });

  it("is nothing where the plan could not be read, or the studio checks by other standards since", () => {
    expect(fixed({}, null)).toEqual([]);
    expect(fixed({}, { ...having("m1", "m2", "m3", "m4"), ground: "other" })).toEqual([]);
  });
});

describe("marks over time", () => {
  it("are one series a criterion, never a sum; an old mark keeps what its level meant", () => {
    const old = { criteria: [{ id: "time", name: "Timing", levels: ["early", "on time"] }] };
    const now = {
      criteria: [
        { id: "time", name: "Time", levels: ["a", "b", "c"] },
        { id: "breath", name: "Breath", levels: ["x", "y"] },
      ],
    };
    expect(
      markSeries([
        { id: "1", at: 1, rubric: old, levels: { time: 2 } },
        { id: "2", at: 2, rubric: now, levels: { time: 1 } },
      ]),
    ).toEqual([
      {
        criterion: "time",
        name: "Time",
        levels: 3,
        points: [
          { marksId: "1", at: 1, level: 2, of: 2, sentence: "on time" },
          { marksId: "2", at: 2, level: 1, of: 3, sentence: "a" },
        ],
      },
    ]);
  });

  it("fit the rubric, or say that it has changed", () => {
    expect(faultOfLevels(STARTER_RUBRIC, { time: 4, breath: 1 })).toBeNull();
    expect(faultOfLevels(STARTER_RUBRIC, {})).toBe("Choose a level for at least one criterion.");
    for (const wrong of [{ time: 5 }, { time: 0 }, { time: 1.5 }, { poise: 1 }] as Levels[])
      expect(faultOfLevels(STARTER_RUBRIC, wrong)).toContain("has changed");
  });

  it("a rubric names each criterion once", () => {
    expect(rubricSchema.safeParse(STARTER_RUBRIC).success).toBe(true);
    const [first] = STARTER_RUBRIC.criteria;
    const twice = rubricSchema.safeParse({ criteria: [first, { ...first, id: "other" }] });
    expect(twice.error?.issues.map(({ message }) => message)).toEqual([
      "Two criteria have the same name. Rename one of them.",
    ]);
  });
});

describe("a class against its plan", () => {
  it("adds up seconds and names the steps that were off by a tenth and five seconds", () => {
    const row = (item: string | null, planned: number, took: number, held = 0) => ({
      ...{ phase: "work" as const, item, planned, given: planned, took, held },
    });
    const taught = taughtAgainstPlan({
      format: "springline.class-log/1",
      sessionId: "0123456789abcdef",
      kind: "class",
      edition: { planId: "a", number: 2, hash: "0".repeat(64) },
      startedAt: "2026-11-20T18:00:00.000Z",
      elapsed: 186,
      whole: true,
      rows: [row(null, 30, 50), row("m1", 60, 68, 4), row("m2", 60, 64), row("m3", 100, 94)],
    });
    expect(taught).toMatchObject({ planned: 250, took: 276, held: 4, whole: true, edition: 2 });
    expect(taught.off).toEqual([{ item: "m1", phase: "work", by: 8 }]);
  });
});
