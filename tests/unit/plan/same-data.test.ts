import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { expect, test } from "vitest";
import { sameData } from "#lib/plan/same-data.ts";

/** Without keys that hold undefined, which count as missing. */
const tidy = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

test("plain data is the same exactly where Node's deep equality finds it so", () => {
  const data = fc.jsonValue({ maxDepth: 3 });
  fc.assert(
    fc.property(data, data, (a, b) => {
      const [x, y] = [tidy(a), tidy(b)];
      expect(sameData(x, y)).toBe(isDeepStrictEqual(x, y));
      expect(sameData(x, structuredClone(x))).toBe(true);
    }),
  );
});

test.each([
  [{ a: 1, b: 2 }, { b: 2, a: 1 }, true],
  [{ a: 1, b: undefined }, { a: 1 }, true],
  [{ a: 1 }, { a: 1, b: undefined }, true],
  [{ a: undefined }, { b: undefined }, true],
  [{ a: 1 }, { b: 1 }, false],
  [{ constructor: 1 }, {}, false],
  [{}, { constructor: 1 }, false],
  [[1, 2], [1, 2, 3], false],
  [[], {}, false],
  [{ 0: 1 }, [1], false],
  [null, {}, false],
  [Number.NaN, Number.NaN, true],
  [0, -0, true],
])("%j and %j: %s", (a, b, same) => {
  expect(sameData(a, b)).toBe(same);
  expect(sameData(b, a)).toBe(same);
});
