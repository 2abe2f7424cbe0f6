/** Answers kept: worked out once while what they read is the very same, let go when nobody asks any more. */
import { describe, expect, test } from "vitest";
import { Kept, KeptEach } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";

describe("the last answer a key", () => {
  test("is worked out again when one of its values changes, and is given the last result", () => {
    const kept = new KeptEach<string>();
    const make = (was: string | undefined) => `${was ?? ""}+`;
    const [a, b] = [{}, {}];
    expect(kept.get("x", [a, 1], make)).toBe("+");
    expect(kept.get("x", [a, 1], make)).toBe("+");
    expect(kept.get("x", [b, 1], make)).toBe("++");
    expect(kept.get("y", [b, 1], make)).toBe("+");
    expect(kept.get("x", [b], make)).toBe("+++");
  });

  test("is kept through one round without use, and not through two", () => {
    const kept = new KeptEach<object>();
    const ask = (key: string) => kept.get(key, [], () => ({}));
    kept.round();
    const [first, other] = [ask("x"), ask("y")];
    kept.round();
    ask("x");
    kept.round();
    expect(ask("x")).toBe(first);
    expect(ask("y")).not.toBe(other);
  });
});

test("is given the last result, and kept while its values are the same", () => {
  const kept = new Kept<number>();
  expect(kept.get([Number.NaN], () => 1)).toBe(1);
  expect(kept.get([Number.NaN], () => 2)).toBe(1);
  expect(kept.get([], (was = 0) => was + 10)).toBe(11);
});

test("a result for a value is worked out once, even undefined", () => {
  const asked: object[] = [];
  const of = perValue((value: object) => {
    asked.push(value);
    return undefined;
  });
  const [a, b] = [{}, {}];
  for (const value of [a, b, a, b]) of(value);
  expect(asked).toEqual([a, b]);
});
