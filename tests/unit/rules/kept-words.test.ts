/** Sentences of findings that were kept without values, in a reader's units: the same that the finding itself would say. */
import { expect, test } from "vitest";
import { ruleExamples } from "#app/rules/examples.ts";
import { findingWords } from "#lib/rules/finding-words.ts";
import { keptFindingWords } from "#lib/rules/kept-words.ts";
import { STARTING_RULES } from "#lib/rules/starting-rules.ts";

const POUNDS = { force: "lbf", length: "in" } as const;
const FOUND = STARTING_RULES.flatMap((rule) => ruleExamples(rule, null).fail.flatMap(({ findings }) => findings));

const numbers = (words: string) => (words.match(/\d+(?:\.\d+)?/g) ?? []).map(Number);
const without = (words: string) => words.replace(/\d+(?:\.\d+)?/g, "#");

test("every rule's own examples: the words of the values, but for what the kept sentence had rounded", () => {
  for (const finding of FOUND) {
    const [own, kept] = [findingWords(finding, POUNDS), keptFindingWords(finding, POUNDS)];
    expect(without(kept)).toBe(without(own));
    // A kept force has tenths of a newton, a kept length millimetres.
    for (const [i, n] of numbers(own).entries()) expect(Math.abs((numbers(kept)[i] ?? 0) - n), kept).toBeLessThan(0.06);
  }
  expect(FOUND.filter((finding) => keptFindingWords(finding, POUNDS) !== finding.message).length).toBeGreaterThan(8);
});

test("a sentence that no template of the rule makes stays as it was kept, and the standard's reader has it as it is", () => {
  const old = { rule: "load-for-body", message: "Press: 120 N are too much." };
  expect(keptFindingWords(old, POUNDS)).toBe(old.message);
  expect(keptFindingWords({ ...old, rule: "gone" }, POUNDS)).toBe(old.message);
  for (const { rule, message } of FOUND)
    expect(keptFindingWords({ rule, message }, { force: "N", length: "cm" })).toBe(message);
});

test("of a name that looks like a force only what the template measures is converted", () => {
  const message = "90 N press: 120 N half-way is hardly felt, even by 55 kg. Is that meant? Add a spring if not.";
  // NIST SP 811, B.8: 120 / 4.448 221 6 and 55 / 0.453 592 37.
  expect(keptFindingWords({ rule: "load-for-body", message }, POUNDS)).toBe(
    "90 N press: 26.98 lbf half-way is hardly felt, even by 121 lb. Is that meant? Add a spring if not.",
  );
});
