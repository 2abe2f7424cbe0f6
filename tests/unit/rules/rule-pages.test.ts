/** What a rule's page shows is read off the rule: every example can be shown, and says what the check says. */

import { describe, expect, test } from "vitest";
import { ruleExamples } from "#app/rules/examples.ts";
import { excerptOf } from "#app/rules/excerpt.ts";
import { readStandardDraft, standardDraftOf } from "#app/rules/standard-draft.ts";
import { trialWords } from "#app/rules/trial-words.tsx";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { bothSides, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { examplesOf } from "#lib/rules/examples.ts";
import { RULES, ruleById } from "#lib/rules/registry.ts";
import { checkStandard } from "#lib/rules/studio-standard.ts";

describe.each(RULES.map((rule) => [rule.id, rule] as const))("%s", (_id, rule) => {
  test("its examples are run: the failing ones say a sentence, the passing ones none", () => {
    const { pass, fail } = ruleExamples(rule, null);
    expect(fail.every((example) => example.findings.length > 0 && example.here === null)).toBe(true);
    expect(pass.every((example) => example.findings.length === 0)).toBe(true);
  });

  test("every example can be shown, all of its items in order, nothing undefined in words", () => {
    for (const { plan } of [...examplesOf(rule).pass, ...examplesOf(rule).fail]) {
      const excerpt = excerptOf(plan, true, STANDARD_FORMATS);
      expect(excerpt.items.map((item) => item.id)).toEqual(plan.items.map((item) => item.id));
      expect(JSON.stringify(excerpt)).not.toMatch(/undefined|NaN|null|\[object/);
    }
  });

  test("saved unchanged it is the rule's own, whatever the studio had", () => {
    const own = readStandardDraft(rule, standardDraftOf(rule, null, STANDARD_FORMATS), null);
    expect(own.problems).toEqual({});
    expect(checkStandard(rule, own.standard ?? {})).toEqual({ ok: true, standard: null });
    const broken = standardDraftOf(rule, { limits: { ...rule.limits.parse({}), gone: 1 } }, STANDARD_FORMATS);
    expect(readStandardDraft(rule, broken, null).problems).toEqual({});
  });

  test("turned off here, its page says that nothing is found here", () => {
    const { fail } = ruleExamples(rule, { level: "off" });
    expect(fail.every((example) => example.here?.length === 0)).toBe(true);
  });
});

const UNITS = { force: "N", length: "cm" };

const rule = (id: string): AnyRule => {
  const found = ruleById(id);
  if (!found) throw new Error(`no rule ${id}`);
  return found;
};

test("an excerpt: times, springs, repetitions, the change between, and what was set for the class", () => {
  const items = [
    { id: "h", kind: "heading" as const, title: "Arms" },
    ...bothSides("r", { springs: { light: 2 }, offsetMm: 80 }, { seconds: 50, transitionSeconds: 4 }),
    { id: "p", kind: "pause" as const, seconds: 20, text: "Water" },
    exampleMove("m", { script: [{ kind: "breath", text: "Out." }] }),
  ];
  const { facts, items: shown } = excerptOf(
    examplePlan(items, { lengthSeconds: 600, openingSeconds: 30 }),
    true,
    STANDARD_FORMATS,
  );
  expect(facts).toEqual(["a class of 10 min", "opening 30 s"]);
  expect(shown.map((i) => [i.at, i.name, i.lasts])).toEqual([
    ["0:30", "Arms", ""],
    ["0:30", "Kneeling row, left", "45 s"],
    ["1:19", "Kneeling row, right", "50 s"],
    ["2:09", "Water", "20 s"],
    ["2:38", "Squat", "45 s"],
  ]);
  expect(shown[1]?.details).toBe(
    "two light · 8 cm from the anchor · 9 repetitions · kneeling, facing back, hands on one handle · upper back, biceps 0.5",
  );
  // "One light, here in the middle": eight syllables at 4.5 a second are 1.8 s, rounded up.
  expect(shown[2]?.change).toBe(
    "4 s planned: spring off, carriage home, handle up, handle down, about 9 s to do, 2 s to tell",
  );
  expect(shown[4]?.change).toBe("2 × quarter turn, change of position, handle down, about 9 s to do");
  expect(shown[4]?.lines).toEqual([{ kind: "breath", text: "Out." }]);
});

test("live: a number out of bounds is said beside its field, in its unit, and the others stay readable", () => {
  const draft = standardDraftOf(
    rule("too-short-or-long"),
    { level: "must", limits: { maxSeconds: 90 } },
    STANDARD_FORMATS,
  );
  expect(draft).toEqual({ level: "must", values: { minSeconds: "30", maxSeconds: "90" }, units: UNITS });
  const wrong = { ...draft, values: { ...draft.values, maxSeconds: "0" } };
  expect(readStandardDraft(rule("too-short-or-long"), wrong, null)).toEqual({
    standard: null,
    problems: { maxSeconds: "Give a number from 1 to 14400 s." },
  });
  expect(readStandardDraft(rule("too-short-or-long"), draft, null).standard).toEqual({
    level: "must",
    limits: { minSeconds: 30, maxSeconds: 90 },
  });
});

test("words are typed as one text, and what cannot be read is said beside it", () => {
  const safety = rule("caution-without-safety-line");
  const draft = standardDraftOf(safety, { limits: { moreWords: { "wrist-load": ["wedge*"] } } }, STANDARD_FORMATS);
  expect(draft.values.moreWords).toBe("wrist load: wedge*");
  expect(readStandardDraft(safety, draft, null).standard?.limits?.moreWords).toEqual({ "wrist-load": ["wedge*"] });
  const wrong = { ...draft, values: { ...draft.values, moreWords: "wedge" } };
  expect(readStandardDraft(safety, wrong, null).problems.moreWords).toMatch(/^Write a caution, a colon/);
});

test("what a standard would change, in words", () => {
  const none = { must: 0, look: 0, info: 0 };
  expect(trialWords({ plans: 0, before: none, after: none })).toBe("There is no team plan yet to try it on.");
  expect(trialWords({ plans: 6, before: { must: 1, look: 2, info: 0 }, after: { must: 0, look: 1, info: 0 } })).toBe(
    "In the 6 team plans: 3 findings (1 must fix, 2 look again) now, 1 finding (1 look again) with this change.",
  );
  expect(trialWords({ plans: 1, before: none, after: none })).toBe(
    "In the one team plan nothing would change: no finding.",
  );
});
