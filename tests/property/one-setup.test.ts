/**
 * One set-up for a change: it tells all of it in the right order, and fixing the findings of a change in any order
 * leaves that one line next to the coach's own.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type SetupAct, setupActs, setupLine } from "#lib/acts/compose.ts";
import { toldAt } from "#lib/acts/told-lines.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { remedyFor } from "#lib/remedies/remedies.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { RULES } from "#lib/rules/registry.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { often } from "#tests/support/long.ts";
import { mended } from "#tests/support/mended.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

const OF_THE_CHANGE = RULES.filter(({ id }) =>
  [
    "change-not-told",
    "hand-or-foot-not-free",
    "let-go-before-carriage-home",
    "springs-changed-carriage-out",
    "start-place-not-told",
    "setup-line-twice",
  ].includes(id),
);
const found = (plan: Plan): readonly Finding[] => checkPlan(plan, OF_THE_CHANGE).findings;

/** A change with its estimated length, told only by `script`. */
function told(plan: Plan, script: (item: MoveItem, before: MoveItem | undefined) => readonly ScriptLine[]): Plan {
  const before = new Map(walkSetups(plan).map((step) => [step.item.id, step.before?.item]));
  const items = plan.items.map((item): PlanItem => {
    if (item.kind === "pause") return { ...item, text: "" };
    if (item.kind !== "move") return item;
    const { transitionSeconds: _planned, ...rest } = item;
    return { ...rest, script: [...script(item, before.get(item.id))] };
  });
  return { ...plan, items };
}

const composed = (plan: Plan, before: MoveItem | undefined, item: MoveItem): ScriptLine[] => {
  const line = setupLine(plan, before, item, setupActs(plan, before, item));
  return line ? [line] : [];
};

/** A set-up line for each of these groups of acts. */
const linesOf = (plan: Plan, before: MoveItem | undefined, item: MoveItem, groups: SetupAct[][]): ScriptLine[] =>
  uniqueLines(groups.flatMap((acts) => setupLine(plan, before, item, acts) ?? []));
/** Springs off and springs on are one clause. */
const uniqueLines = (lines: ScriptLine[]) => [...new Map(lines.map((line) => [line.text, line])).values()];
/** Lying down on a side says position and side in one clause. */
const ON_ONE_SIDE = "lie on your {side} side";
/** "Carriage home, kneel." is two clauses, and so is what lying down on a side joins. */
const clausesIn = (text: string): string[] =>
  text
    .replace(/\.$/, "")
    .replaceAll(/, crossed/gi, " crossed")
    .split(", ")
    .map((clause) => clause.toLowerCase())
    .flatMap((clause) => (clause === ON_ONE_SIDE ? ["lie on your side", "{side} side"] : [clause]));

/** Nothing can be inserted between two acts of one line, so a posture between them counts as told. */
const isPosture = ({ act }: SetupAct): boolean => act === "station" || act === "position";

/** What coaches may write: nothing, or parts of the change, in right and wrong orders. */
const OWN = [
  "Carriage home.",
  "{springs}.",
  "Handles down.",
  "Handles down, carriage home.",
  "{springs}, then the carriage home.",
  "Face the back.",
  "{side} side, take the handles.",
  "Kneel, then out of the strap.",
  "Stand tall.",
];
const ownLines = fc.array(fc.constantFrom(...OWN), { maxLength: 2 });
const itemOf = (plan: Plan, id: string): MoveItem => {
  const item = itemById(plan, id);
  if (item?.kind !== "move") throw new Error(`no move ${id}`);
  return item;
};
const scriptOf = (plan: Plan, id: string): readonly ScriptLine[] => itemOf(plan, id).script ?? [];
const scriptsOf = (plan: Plan) => plan.items.map((item) => (item.kind === "move" ? (item.script ?? []) : []));

/** Takes fixes one after the other, with findings in the order of `pick`; returns how many were taken. */
function mendAll(
  plan: Plan,
  pick: (findings: readonly Finding[]) => readonly Finding[],
): { plan: Plan; taken: number } {
  let now = plan;
  let taken = 0;
  // Uses the earlier findings, as when two people press at nearly the same time.
  for (const finding of pick(found(plan))) {
    const mend = remedyFor(now, finding);
    if (!mend) continue;
    now = mended(now, mend);
    taken++;
  }
  return { plan: now, taken };
}

describe("the composed set-up", () => {
  it("leaves no finding of the change, and nothing to fix", () => {
    let lines = 0;
    fc.assert(
      fc.property(validPlan, (any) => {
        const plan = told(any, (item, before) => composed(any, before, item));
        lines += scriptsOf(plan).flat().length;
        expect(found(plan).map(({ message }) => message)).toEqual([]);
        for (const finding of found(told(any, () => []))) expect(remedyFor(plan, finding), finding.message).toBeNull();
      }),
      { seed: 41, numRuns: often(40, 300) },
    );
    expect(lines).toBeGreaterThan(often(40, 300));
  }, 120_000);

  it("is the one line of a silent move, whichever of its findings is fixed first", () => {
    let mends = 0;
    fc.assert(
      fc.property(validPlan, (any) => {
        const silent = told(any, () => []);
        const whole = told(any, (item, before) => composed(any, before, item));
        const concerned = new Set(found(silent).flatMap(({ items }) => items));
        const expected = whole.items.map((item) => (item.kind === "move" && concerned.has(item.id) ? item.script : []));
        for (const pick of [(all: readonly Finding[]) => all, (all: readonly Finding[]) => all.toReversed()]) {
          const { plan, taken } = mendAll(silent, pick);
          mends += taken;
          expect(scriptsOf(plan)).toEqual(expected);
          expect(found(plan).map(({ message }) => message)).toEqual([]);
        }
      }),
      { seed: 42, numRuns: often(25, 200) },
    );
    expect(mends).toBeGreaterThan(often(25, 200));
  }, 120_000);

  it("works around acts that the coach's lines tell in the right order: each is told once, in order, none is missing", () => {
    let inBetween = 0;
    let exact = 0;
    fc.assert(
      fc.property(
        validPlan,
        fc.array(fc.boolean(), { minLength: 40, maxLength: 40 }),
        fc.boolean(),
        (any, picks, apart) => {
          let at = 0;
          const start = told(any, (item, before) => {
            const acts = setupActs(any, before, item);
            const picked = acts.filter(() => picks[at++ % picks.length]);
            if (apart)
              return linesOf(
                any,
                before,
                item,
                picked.map((act) => [act]),
              );
            // One line tells several acts; an act missing within a line cannot be inserted.
            const places = picked.map((act) => acts.indexOf(act));
            const run = acts.slice(Math.min(...places), Math.max(...places) + 1);
            return linesOf(any, before, item, run.length === 0 ? [] : [run]);
          });
          const { plan } = mendAll(start, (all) => all);
          expect(found(plan).map(({ message }) => message)).toEqual([]);
          for (const step of walkSetups(plan)) {
            const own = scriptOf(start, step.item.id);
            const script = scriptOf(plan, step.item.id);
            expect(script.filter((line) => own.includes(line))).toEqual(own);
            const said = script.map(({ text }) => clausesIn(text));
            const clauses = said.flat();
            expect(new Set(clauses).size, script.map(({ text }) => text).join(" | ")).toBe(clauses.length);
            if (script.length === own.length) continue;
            if (script.length > own.length + 1) inBetween++;
            const acts = setupActs(plan, step.before?.item, step.item);
            const clausesOf = (some: SetupAct[]) =>
              linesOf(plan, step.before?.item, step.item, [some]).flatMap(({ text }) => clausesIn(text));
            const each = acts.flatMap((act) => clausesOf([act]));
            const inOrder = [...new Set(each)].filter((clause) => clauses.includes(clause));
            const signs = toldAt(start, { ...step, item: itemOf(start, step.item.id) }, acts);
            // Only where the coach's words tell no further act ("other foot" tells the side too).
            const mine = own.flatMap(({ text }) => clausesIn(text));
            const plain = acts.every(
              (act) => !signs.has(act) || clausesOf([act]).every((clause) => mine.includes(clause)),
            );
            if (apart && plain) {
              expect(clauses).toEqual(inOrder);
              exact++;
            }
            // An act without a clause of its own is told by a sign in the coach's words.
            for (const act of acts)
              if (!signs.has(act) && ((apart && plain) || !isPosture(act)))
                for (const { text } of linesOf(plan, step.before?.item, step.item, [[act]]))
                  expect(clauses).toEqual(expect.arrayContaining(clausesIn(text)));
          }
        },
      ),
      { seed: 44, numRuns: often(40, 300) },
    );
    expect(inBetween).toBeGreaterThan(often(5, 50));
    expect(exact).toBeGreaterThan(often(20, 150));
  }, 120_000);

  it("keeps every line that the coach wrote, adds at most one per place, and leaves no finding", () => {
    let mends = 0;
    fc.assert(
      fc.property(validPlan, fc.array(ownLines, { minLength: 12, maxLength: 12 }), fc.boolean(), (any, own, turned) => {
        let at = 0;
        const lines = () => [...new Set(own[at++ % own.length])].map((text) => ({ kind: "setup" as const, text }));
        const start = told(any, lines);
        const { plan, taken } = mendAll(start, (all) => (turned ? all.toReversed() : all));
        mends += taken;
        const before = scriptsOf(start);
        for (const [i, script] of scriptsOf(plan).entries()) {
          const mine = before[i] ?? [];
          expect(mine.every((line) => script.includes(line))).toBe(true);
          // At most one per place: before, between and after the coach's lines.
          expect(script.length).toBeLessThanOrEqual(2 * mine.length + 1);
        }
        expect(
          found(plan)
            .filter((finding) => remedyFor(plan, finding))
            .map(({ message }) => message),
        ).toEqual([]);
        expect(found(plan).map(({ message }) => message)).toEqual([]);
      }),
      { seed: 43, numRuns: often(40, 300) },
    );
    expect(mends).toBeGreaterThan(often(40, 300));
  }, 120_000);
});
