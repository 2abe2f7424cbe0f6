/**
 * What one key costs, counted and not timed: which rules are asked again, for how many items. The spans of talk, the
 * findings and the lines that nothing was written in stay the very same values.
 */
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import { orderedIds, scriptOf } from "#lib/doc/read.ts";
import { setItemField } from "#lib/doc/write.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import type { AnyRule, RuleReads } from "#lib/rules/define/types.ts";
import { RULES } from "#lib/rules/registry.ts";
import { claimsOf } from "#lib/talk/claims/claims.ts";
import { longClass } from "#tests/support/long-class.ts";

/** Rules that note by what they read each time that they are asked. */
function noted(asked: RuleReads[]): AnyRule[] {
  const one = new Set<RuleReads>();
  return RULES.map((rule): AnyRule => {
    const isFirst = !one.has(rule.reads);
    one.add(rule.reads);
    const within: AnyRule["within"] = (limits) => {
      const { limitsRead, check } = rule.within(limits);
      const noting: typeof check = (ctx) => {
        if (isFirst) asked.push(rule.reads);
        return check(ctx);
      };
      return { limitsRead, check: noting };
    };
    return { ...rule, within };
  });
}

function opened() {
  const plan = longClass(60, 400);
  const { moves, equipment, standards = {} } = plan;
  const doc = createPlanDoc(plan, { carry: false });
  const reader = new PlanReader(doc);
  const asked: RuleReads[] = [];
  const analyst = new PlanAnalyst(noted(asked));
  const look = () => {
    asked.length = 0;
    const { plan: now } = reader.read({ moves, equipment, standards });
    const { track, findings, clock } = analyst.of(now);
    return { plan: now, clock, track, findings, asked: countOf(asked) };
  };
  return { doc, look };
}

const countOf = (asked: readonly RuleReads[]): Partial<Record<RuleReads, number>> => {
  const counts: Partial<Record<RuleReads, number>> = {};
  for (const reads of asked) counts[reads] = (counts[reads] ?? 0) + 1;
  return counts;
};

/** All else is the whole class. */
const ONCE_AN_ITEM: readonly string[] = ["item", "change", "voice", "claims"];

const claimsTime = (line: ScriptLine): boolean =>
  claimsOf(line).some(({ says }) => says === "time" || says === "halfway");

const moveIds = (doc: Y.Doc): string[] => orderedIds(doc).filter((id) => scriptOf(doc, id) !== undefined);
const itemOf = (plan: Plan, id: string): MoveItem | undefined =>
  plan.items.find((item): item is MoveItem => item.id === id && item.kind === "move");

/** Types a letter into the first line of an item that is of a kind. */
function type(doc: Y.Doc, id: string, kind: string): number {
  const lines = (scriptOf(doc, id)?.toArray() ?? []).filter((line) => line instanceof Y.XmlElement);
  const at = lines.findIndex((line) => line.getAttribute("kind") === kind);
  const text = lines[at]?.toArray().find((piece) => piece instanceof Y.XmlText);
  if (!text) throw new Error(`${id} has no ${kind} line`);
  text.insert(0, "o");
  return at;
}

describe("after one letter", () => {
  test.each(["form", "setup"])("in a %s line of each move no rule is asked of more than its neighbours", (kind) => {
    const { doc, look } = opened();
    let { clock: before } = look();
    const ids = moveIds(doc).filter((id) => scriptOf(doc, id)?.toString().includes(`kind="${kind}"`));
    expect(ids.length).toBeGreaterThan(20);
    let [asBefore, toldLonger] = [0, 0];
    for (const id of ids) {
      type(doc, id, kind);
      const { asked, clock } = look();
      // A letter with which the set-up takes a second longer to tell is a changed time, and asks about times.
      const isTime = clock !== before;
      const isLonger = clock.total !== before.total;
      before = clock;
      if (isTime) toldLonger++;
      else asBefore++;
      expect(Object.keys(asked).filter((reads) => !ONCE_AN_ITEM.includes(reads))).toEqual(isTime ? ["times"] : []);
      if (isLonger) continue;
      expect(asked.item).toBe(1);
      expect(asked.change ?? 0).toBeLessThanOrEqual(2);
      expect(asked.voice ?? 0).toBeLessThanOrEqual(3);
      // Claims are judged by the clock, which also says how long each change takes to tell.
      if (!isTime) expect(asked.claims ?? 0).toBeLessThanOrEqual(3);
    }
    expect(asBefore).toBeGreaterThan(20);
    expect(toldLonger > 0).toBe(kind === "setup");
  });

  test("the other lines of its item are the very same", () => {
    const { doc, look } = opened();
    const before = look().plan;
    const [id = ""] = moveIds(doc).slice(5);
    const at = type(doc, id, "form");
    const [was = [], now = []] = [before, look().plan].map((plan) => itemOf(plan, id)?.script);
    expect(now.flatMap((line, n) => (line === was[n] ? [] : [n]))).toEqual([at]);
  });

  test("in the work, what is said of every other item is the very same", () => {
    const { doc, look } = opened();
    const before = look().track;
    const [id = ""] = moveIds(doc).slice(5);
    type(doc, id, "form");
    const after = look().track;
    const known = new Set(before.cues);
    const others = after.cues.filter((cue) => !known.has(cue)).map((cue) => cue.item);
    // The call of what comes is of the item itself, its set-up of the one after it, in the same span.
    expect(new Set(others).size).toBeLessThanOrEqual(2);
    expect(others).toContain(id);
  });
});

test("after one changed time only what it changes is asked about, not what it moves", () => {
  const { doc, look } = opened();
  const { findings: before } = look();
  const [id = "", next = ""] = moveIds(doc).slice(5);
  setItemField({ doc, origin: "test" }, id, "seconds", 77);
  const { asked, plan, findings } = look();
  expect(asked.item).toBe(1);
  expect(asked.times).toBe(1);
  expect(asked.change).toBe(1);
  // Its own, and those of the item after it, which is set up while it ends.
  expect(asked.voice).toBeLessThanOrEqual(2);
  const tellsTime = plan.items.filter((item) => item.kind === "move" && item.script?.some(claimsTime));
  expect(asked.claims ?? 0).toBeLessThanOrEqual(tellsTime.length + 2);
  expect(asked).not.toHaveProperty("setups");
  expect(asked).not.toHaveProperty("kinds");
  // Findings about later items that name no time of the class are the very same.
  const at = plan.items.findIndex((item) => item.id === next) + 1;
  const later = new Set(plan.items.slice(at).map((item) => item.id));
  const known = new Set(before);
  const anew = findings.filter((one) => later.has(one.items[0] ?? "") && one.items.length === 1 && !known.has(one));
  expect(anew.filter(({ values }) => values.at === undefined && values.kind === undefined)).toEqual([]);
});

test("a letter in a line of the work asks about no change", () => {
  const { doc, look } = opened();
  look();
  for (const id of moveIds(doc).slice(5, 15)) {
    if (!scriptOf(doc, id)?.toString().includes('kind="form"')) continue;
    type(doc, id, "form");
    expect(look().asked).not.toHaveProperty("change");
  }
});
