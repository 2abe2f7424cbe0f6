import { describe, expect, it } from "vitest";
import { acceptanceKey, stillAccepted } from "#lib/acceptance/accepted.ts";
import type { Finding } from "#lib/rules/define/types.ts";

const FINDING: Finding = {
  rule: "rushed-change",
  level: "look",
  items: ["b", "a"],
  message: "The change takes 14 s and has 10 s.",
  values: { needsSeconds: 14, hasSeconds: 10, at: "12:30" },
  key: "rushed-change:short:a,b",
};
const acceptance = (finding: Finding) => ({ rule: finding.rule, findingKey: acceptanceKey(finding) ?? "", id: "one" });
const holds = (now: Finding) => stillAccepted([now], [acceptance(FINDING)]).of.has(now);

describe("[INV-28] an accepted finding", () => {
  it("stays accepted while rule, key, items, sentence and values are the same", () => {
    expect(holds({ ...FINDING })).toBe(true);
    expect(holds({ ...FINDING, items: ["a", "b"] })).toBe(true);
    expect(holds({ ...FINDING, values: { at: "12:30", hasSeconds: 10, needsSeconds: 14, left: undefined } })).toBe(
      true,
    );
  });

  it.each<[string, Partial<Finding>]>([
    ["a value", { values: { ...FINDING.values, hasSeconds: 9.5 } }],
    ["a value more", { values: { ...FINDING.values, people: 10 } }],
    ["its sentence", { message: "The change takes 15 s and has 10 s." }],
    ["its items", { items: ["a"] }],
    ["its key", { key: "rushed-change:short:a,b:left" }],
    ["its rule", { rule: "long-change" }],
    ["its level, up", { level: "must" }],
    ["its level, down", { level: "info" }],
  ])("stands again when %s changes, and holds again when that comes back", (_, change) => {
    const now = { ...FINDING, ...change };
    const before = acceptance(FINDING);
    expect(stillAccepted([now], [before])).toEqual({ of: new Map(), noLonger: [before] });
    expect(holds(FINDING)).toBe(true);
  });

  it("is told apart from another of its rule", () => {
    const other = { ...FINDING, key: "rushed-change:short:c" };
    const { of, noLonger } = stillAccepted([other, FINDING], [acceptance(FINDING)]);
    expect([...of.keys()]).toEqual([FINDING]);
    expect(noLonger).toEqual([]);
  });

  it("cannot have values that JSON cannot hold", () => {
    expect(acceptanceKey({ ...FINDING, values: { big: 1n } })).toBeNull();
  });
});
