/** What no longer fits, in a sentence, and the order of a block that has changed. */

import { expect, test } from "vitest";
import { analyse } from "#lib/analysis/check-plan.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { effectOf } from "#lib/proposal/effect.ts";
import { applied, fits } from "#lib/proposal/fits.ts";
import { partsOf } from "#lib/proposal/of-edit.ts";
import { effectChange } from "#lib/proposal/part-words.ts";
import { stretchesOf } from "#lib/proposal/words-diff.ts";
import { SMALL_PLAN } from "../../support/sync-server.ts";

const move = (id: string, more: Partial<MoveItem> = {}): MoveItem => ({
  ...{ id, kind: "move", move: "kneeling-row", side: "both", seconds: 45, springs: { firm: 1 } },
  ...more,
});
const planOf = (...items: Plan["items"]): Plan => ({ ...SMALL_PLAN, items });
const whys = (plan: Plan, parts: ReturnType<typeof partsOf>) => fits(plan, parts).map(({ why }) => why);

test("a value that was set meanwhile is told with what it was and is", () => {
  const script = [{ kind: "form", text: "Long neck." }] as const;
  const before = planOf(move("a", { script: [...script] }));
  const parts = partsOf(
    before,
    planOf(
      move("a", { seconds: 50, springs: { firm: 2 }, script: [{ kind: "form", text: "Long neck, soft knees." }] }),
    ),
    "a",
  );
  expect(parts.map(({ id }) => id)).toEqual(["seconds", "spring.firm", "line.0"]);
  const now = planOf(move("a", { seconds: 60, springs: {}, script: [{ kind: "form", text: "Short neck." }] }));
  expect(whys(now, parts)).toEqual([
    "The time was 45 s when this was proposed; it is 60 s now.",
    "The number of firm springs was 1 when this was proposed; it is none now.",
    "This line was changed or removed meanwhile: “Long neck.”.",
  ]);
  const named = partsOf(before, planOf(move("a", { script: [{ kind: "form", text: "Tall neck." }] })), "a", {
    ids: ["7-1"],
  });
  const [judged] = fits(now, named, new Map([["a", ["7-1"]]]));
  expect(judged?.why).toBe("This line was changed meanwhile. It now says (form): “Short neck.”.");
  expect(whys(planOf(), parts)).toEqual(Array(3).fill("This item was taken out of the plan."));
  expect(whys(applied(before, parts), parts)).toEqual(Array(3).fill("It is like this already."));
});

test("another order keeps what was added meanwhile behind the item it follows, and leaves out what was taken out", () => {
  const before = planOf({ id: "h", kind: "heading", title: "Arms" }, move("a"), move("b"), move("c"));
  const after = planOf({ id: "h", kind: "heading", title: "Arms" }, move("c"), move("a"), move("b"));
  const parts = partsOf(before, after, "h");
  const ids = (plan: Plan) => plan.items.map(({ id }) => id).join("");
  const now = planOf({ id: "h", kind: "heading", title: "Arms" }, move("a"), move("n"), move("c"));
  expect(ids(applied(now, parts))).toBe("hcan");
  const other = planOf({ id: "h", kind: "heading", title: "Arms" }, move("b"), move("a"), move("c"));
  expect(whys(other, parts)).toEqual(["The items of this block were put into another order meanwhile."]);
  expect(applied(other, parts)).toBe(other);
});

test("the effect is told in numbers with their signs, and in findings that go and come", () => {
  const before = planOf(move("a", { side: "left" }));
  const after = planOf(move("a", { side: "left", seconds: 60, springs: { firm: 2 } }));
  const effect = effectOf(analyse(before), analyse(after), "a");
  const told = Object.fromEntries(effect.numbers.map((one) => [one.name, effectChange(one, STANDARD_FORMATS)]));
  expect(told).toMatchObject({ "The class": "+15 s", "Work on the left": "+15 s", "Force half way": "+120 N" });
  expect(told["Work on the right"]).toBeUndefined();
  const rules = (list: typeof effect.gone) => list.map(({ rule }) => rule);
  expect(rules(effect.changed)).toEqual(["total-length", "missing-side"]);
  expect(rules(effect.gone).filter((rule) => rules(effect.changed).includes(rule))).toEqual([]);
  const same = effectOf(analyse(before), analyse(before), "a");
  expect(same.numbers.map((one) => effectChange(one, STANDARD_FORMATS))).toEqual(["no change"]);
  expect([...same.gone, ...same.come]).toEqual([]);
});

test("words that go and words that come are told apart", () => {
  expect(stretchesOf("Press the carriage back.", "Press it back slowly.")).toEqual([
    { text: "Press ", how: "same" },
    { text: "the carriage", how: "gone" },
    { text: "it", how: "come" },
    { text: " back", how: "same" },
    { text: " slowly", how: "come" },
    { text: ".", how: "same" },
  ]);
});
