/** A pattern that is tried only where it can match finds what it finds when it is always tried. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { needsOf } from "#lib/talk/claims/pattern-needs.ts";
import { spoken } from "#lib/talk/claims/spoken-pattern.ts";

describe("what a pattern cannot do without", () => {
  it.each([
    [/\bhalf ?way there$/, [["there"], ["half"], ["way"]]],
    [/(?:last|final) (?<n>\d+) reps?/, [["last", "final"].sort(), ["rep"], ["\\d"]]],
    [/(?:just |only )*more/, [["more"]]],
    [/(?:one|[a-z]+) more/, [["more"]]],
    [/(?<!no )more(?! of)/, [["more"]]],
    [/seconds{0,2}/, [["second"]]],
    [/a+b/, []],
    [/more/i, []],
    [/(more)\1/, []],
  ])("%s", (pattern, needs) => {
    expect(needsOf(pattern)).toEqual(needs);
  });
});

const word = fc.constantFrom("last", "one", "more", "half", "way", "two", "in", "seconds", "a", "12");
const piece: fc.Arbitrary<string> = fc.letrec<{ all: string; some: string }>((tie) => ({
  all: fc.oneof({ maxDepth: 3 }, word, fc.constantFrom("[a-z]+", "\\d", "\\b", ".", " ", "way?", "on+e"), tie("some")),
  some: fc
    .tuple(
      fc.constantFrom("(?:", "(", "(?=", "(?!", "(?<!"),
      fc.array(fc.array(tie("all"), { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 }),
      fc.constantFrom("", "?", "*", "+", "{0,2}", "{1,2}", "{2}"),
    )
    .map(([open, branches, times]) => {
      const group = `${open}${branches.map((parts) => parts.join(" ")).join("|")})`;
      return open.includes("=") || open.includes("!") ? group : group + times;
    }),
})).all;

it("finds the same as the plain expression, whatever both are", () => {
  let matches = 0;
  fc.assert(
    fc.property(
      fc.array(piece, { minLength: 1, maxLength: 4 }).map((parts) => parts.join("")),
      fc.array(fc.array(word, { maxLength: 8 }), { minLength: 5, maxLength: 5 }),
      (source, texts) => {
        const [plain, tried] = [new RegExp(source), spoken(source)];
        for (const text of texts.map((words) => words.join(" "))) {
          const found = plain.exec(text);
          if (found && found[0] !== "") matches++;
          expect(tried.exec(text)).toEqual(found);
        }
      },
    ),
    { seed: 61, numRuns: 2000 },
  );
  expect(matches).toBeGreaterThan(500);
});
