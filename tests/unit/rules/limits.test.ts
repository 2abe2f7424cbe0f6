/** Limits as fields: every rule's can be shown and typed, and what is typed is what the rule's schema takes. */
import { describe, expect, test } from "vitest";
import * as z from "zod/mini";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { badLimits } from "#lib/rules/bad-limits.ts";
import { limits, wordsLimit } from "#lib/rules/define/limit-fields.ts";
import {
  type Limit,
  limitsOf,
  limitWords,
  type NumberLimit,
  numberText,
  readNumberLimit,
  readWordsLimit,
  wordsText,
} from "#lib/rules/limits.ts";
import { RULES, ruleById } from "#lib/rules/registry.ts";
import { checkStandard } from "#lib/rules/studio-standard.ts";

const RULE_LIMITS = RULES.flatMap((rule) => limitsOf(rule).map((limit) => ({ rule, limit })));
const numbers = RULE_LIMITS.filter((x): x is { rule: (typeof RULES)[number]; limit: NumberLimit } => {
  return x.limit.kind === "number";
});
const example = z.strictObject({
  hurrySeconds: z
    ._default(z.number().check(z.minimum(0), z.maximum(120)), 2)
    .check(z.describe("Too short by no more than this is only looked at again")),
  maxShare: z._default(z.number().check(z.minimum(0.5), z.maximum(1)), 0.67),
  roundsCount: z._default(z.int().check(z.minimum(1), z.maximum(9)), 3),
  maxUnderSeconds: z.optional(z.number().check(z.minimum(0), z.maximum(3600))),
  kinds: z._default(z.array(z.enum(["setup", "breath"])).check(z.maxLength(2)), ["setup"]),
  once: z._default(z.boolean(), false),
});
const [hurry, share, rounds, under, kinds, once] = limitsOf({ limits: example }) as readonly NumberLimit[];

test("kind, unit, bounds and own value are read off the schema", () => {
  expect(hurry).toEqual({
    kind: "number",
    name: "hurrySeconds",
    label: "Too short by no more than this is only looked at again",
    unit: "s",
    whole: false,
    min: 0,
    max: 120,
    usual: 2,
  });
  expect(share).toMatchObject({ unit: "%", min: 0.5, max: 1, usual: 0.67, label: "max" });
  expect(rounds).toMatchObject({ unit: "", whole: true });
  expect(under).toMatchObject({ usual: null, label: "max under" });
  expect(kinds).toMatchObject({ kind: "choices", options: ["setup", "breath"], usual: ["setup"] });
  expect(once).toMatchObject({ kind: "yes-no", usual: false });
});

test("what is typed is read with a point or a comma, percent as a share, and refused with its bounds", () => {
  if (!hurry || !share || !rounds || !under) throw new Error("no limits");
  expect(readNumberLimit(hurry, " 2,5 ", STANDARD_FORMATS)).toEqual({ ok: true, value: 2.5 });
  expect(readNumberLimit(hurry, "121", STANDARD_FORMATS)).toEqual({ ok: false, say: "Give a number from 0 to 120 s." });
  expect(readNumberLimit(hurry, "", STANDARD_FORMATS)).toMatchObject({ ok: false });
  expect(readNumberLimit(hurry, "2 s", STANDARD_FORMATS)).toMatchObject({ ok: false });
  expect(readNumberLimit(share, "67", STANDARD_FORMATS)).toEqual({ ok: true, value: 0.67 });
  expect(readNumberLimit(share, "29", STANDARD_FORMATS)).toEqual({ ok: false, say: "Give a number from 50 to 100 %." });
  expect(readNumberLimit(rounds, "2.5", STANDARD_FORMATS)).toEqual({
    ok: false,
    say: "Give a whole number from 1 to 9.",
  });
  expect(readNumberLimit(under, "", STANDARD_FORMATS)).toEqual({ ok: true, value: null });
  expect([0.29, 0.67, 0.07, 1].map((v) => numberText(share, v, STANDARD_FORMATS))).toEqual(["29", "67", "7", "100"]);
});

test("words by choice are shown as they are typed, and refused with an example", () => {
  const [words] = limitsOf({
    limits: limits({ moreWords: wordsLimit({ of: ["wrist-load", "kneeling"], says: "Words" }) }),
  });
  if (words?.kind !== "words") throw new Error("no words limit");
  const read = readWordsLimit(words, "Wrist load: wedge*, strap ; kneeling: bolster; kneeling: block;");
  expect(read).toEqual({ ok: true, value: { "wrist-load": ["wedge*", "strap"], kneeling: ["bolster", "block"] } });
  expect(read.ok && wordsText(read.value)).toBe("wrist load: wedge*, strap; kneeling: bolster, block");
  expect(readWordsLimit(words, "  ")).toEqual({ ok: true, value: {} });
  for (const bad of ["bolster", "kneeling:", "ankle: strap"]) {
    const refused = readWordsLimit(words, bad);
    expect(refused.ok ? "" : refused.say).toMatch(/^Write a caution, a colon/);
  }
});

test("values in words", () => {
  const say = (limit: Limit | undefined, value: unknown) => (limit ? limitWords(limit, value, STANDARD_FORMATS) : "");
  expect([say(hurry, 2), say(share, 0.67), say(rounds, 3), say(under, undefined)]).toEqual([
    "2 s",
    "67%",
    "3",
    "not set",
  ]);
  expect([say(kinds, ["setup", "breath"]), say(kinds, []), say(once, true)]).toEqual([
    "set-up and breath",
    "none",
    "yes",
  ]);
});

describe("every rule", () => {
  test("each limit is one that a screen can type", () => {
    expect(RULE_LIMITS.filter(({ limit }) => limit.kind === "other").map((x) => x.rule.id)).toEqual([]);
  });

  test("each number's own value goes through its field unchanged, and its bounds are the schema's", () => {
    for (const { rule, limit } of numbers) {
      const { usual, min, max, name } = limit;
      expect(readNumberLimit(limit, numberText(limit, usual, STANDARD_FORMATS), STANDARD_FORMATS)).toEqual({
        ok: true,
        value: usual,
      });
      const takes = (value: number) => rule.limits.safeParse({ [name]: value }).success;
      expect([takes(min), takes(max), takes(min - 1e-6), takes(max + 1e-6)], `${rule.id} ${name}`).toEqual([
        true,
        true,
        false,
        false,
      ]);
    }
  });

  test("the rule's own values are not a studio standard", () => {
    for (const rule of RULES) {
      expect(checkStandard(rule, { limits: rule.limits.parse({}) })).toEqual({ ok: true, standard: null });
    }
  });
});

test("a level is kept even where it is the rule's own: it then counts for milder cases too", () => {
  const rule = ruleById("transition-too-short");
  if (!rule) throw new Error("no such rule");
  expect(checkStandard(rule, { level: "must" })).toEqual({ ok: true, standard: { level: "must" } });
  expect(checkStandard(rule, { limits: { hurrySeconds: -1 } })).toEqual({
    ok: false,
    limit: "hurrySeconds",
    say: "The limit hurrySeconds should be a number from 0 to 120.",
  });
});

test("words for something that is no caution are refused at their place", () => {
  const safety = ruleById("caution-without-safety-line");
  if (!safety) throw new Error("no such rule");
  const [first] = badLimits(safety, { moreWords: { ankle: ["strap"] } });
  expect(first?.path).toEqual(["standards", safety.id, "limits", "moreWords", "ankle"]);
  expect(first?.problem).toMatch(/^should be one of: wrist-load, kneeling,/);
  expect([...badLimits(safety, { moreWords: { kneeling: ["bolster"] } })]).toEqual([]);
});
