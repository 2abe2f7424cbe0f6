/** The first draft: what is proposed, when it stops, and that none of it is a mistake that the rules would find. */
import { describe, expect, test } from "vitest";
import { analyse } from "#lib/analysis/check-plan.ts";
import { firstDraft, takeDraft } from "#lib/draft/first-draft.ts";
import { seededRandom } from "#lib/order/random.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";
import { often } from "#tests/support/long.ts";

const bare = (plan: Plan): Plan => ({
  ...plan,
  items: plan.items.map((item): PlanItem => {
    if (item.kind !== "move") return item;
    const { script: _script, ...rest } = item;
    return rest;
  }),
});

const linesOf = (plan: Plan, id: string): readonly ScriptLine[] =>
  (plan.items.find((item) => item.id === id) as MoveItem).script ?? [];

/** As the page writes it: set-up first, everything else at the end. */
function taken(plan: Plan, ids = plan.items.map(({ id }) => id)): Plan {
  const { changes } = takeDraft(firstDraft(plan), ids);
  const items = plan.items.map((item): PlanItem => {
    if (item.kind !== "move") return item;
    let script = item.script ?? [];
    for (const change of changes) {
      if (change.itemId !== item.id || !("value" in change)) continue;
      if (change.field === "firstLine") script = [change.value, ...script];
      if (change.field === "lastLine") script = [...script, change.value];
    }
    return { ...item, script };
  });
  return { ...plan, items };
}

const PLANS = [UPPER_BODY_AND_TRUNK, WHOLE_BODY, FIRST_TRY].map(bare);
/** What the words of a plan may be found to lack or to say wrongly. */
const OF_WORDS =
  /^(missing-cue|change-not-told|says-otherwise|caution-without|springs-changed-carriage-out|hand-or-foot)/;

describe.each(PLANS.map((plan) => [plan.title, plan] as const))("%s without its words", (_, plan) => {
  test("has something for every move; all taken, no rule about words asks for more", () => {
    const moves = plan.items.filter(isMoveItem);
    expect([...firstDraft(plan).keys()]).toEqual(moves.map(({ id }) => id));
    const whole = taken(plan);
    const found = analyse(whole).findings.filter(({ rule }) => OF_WORDS.test(rule));
    expect(found.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
    expect(firstDraft(whole).size).toBe(0);
  });

  test("line by line it comes to the same, and a move with words of its own is let alone", () => {
    const [first] = plan.items.filter(isMoveItem);
    if (!first) throw new Error("no move");
    const proposed = firstDraft(plan).get(first.id) ?? [];
    const [line] = proposed.slice(-1).map((one) => one.line);
    if (!line) throw new Error("no line");
    const withLine = (script: ScriptLine[]): Plan => ({
      ...plan,
      items: plan.items.map((item) => (item.id === first.id ? { ...first, script } : item)),
    });
    const rest = firstDraft(withLine([line])).get(first.id) ?? [];
    expect(rest.map((one) => one.line)).toEqual(proposed.slice(0, -1).map((one) => one.line));
    expect(firstDraft(withLine([{ kind: "form", text: "Ribs down." }])).has(first.id)).toBe(false);
    expect(firstDraft(withLine([{ kind: "form", text: "  " }])).get(first.id)).toHaveLength(proposed.length);
  });
});

test("in any order of moves, no proposed line says what the plan does not have", () => {
  const roll = seededRandom(7);
  for (let n = 0; n < often(10, 200); n++) {
    const plan = PLANS[n % PLANS.length] as Plan;
    const items = plan.items.filter(isMoveItem).toSorted(() => roll() - 0.5);
    const found = analyse(taken({ ...plan, items })).findings.filter(({ rule }) =>
      /says-otherwise|not-told/.test(rule),
    );
    expect(found.map(({ message }) => message)).toEqual([]);
  }
});

test("the second side hears its set-up and its start only; a caution is answered once in a block", () => {
  const plan = PLANS[0] as Plan;
  const draft = firstDraft(plan);
  const sided = plan.items.filter(isMoveItem).filter(({ side }) => side === "left" || side === "right");
  const [one] = sided;
  const other = sided.find(({ move, side }) => move === one?.move && side !== one?.side);
  const kinds = (id = "") => (draft.get(id) ?? []).map(({ line }) => line.kind);
  expect(kinds(one?.id)).toContain("breath");
  expect(kinds(other?.id)).toEqual(["setup", "start"]);
  const block = (kind: string) => (line: ScriptLine) => line.kind === kind;
  const kneeling = plan.items.filter(isMoveItem).flatMap(({ id }) => linesOf(taken(plan), id).filter(block("safety")));
  expect(kneeling.filter(({ text }) => text.startsWith("If kneeling is hard")).length).toBeLessThan(5);
});
