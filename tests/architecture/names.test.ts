/** One name, one meaning; no function longer than a screen. */
import { expect, test } from "vitest";
import { sources } from "./sources.ts";

/** Names that the pages' framework asks for in many files. */
const FRAMEWORK = new Set([
  ...["default", "metadata", "generateMetadata", "viewport", "dynamic"],
  ...["GET", "POST", "PUT", "PATCH", "DELETE"],
]);
const MAX_LINES = 40;
/** Says why a function is better whole, in the comment above it. */
const REASON = /Long because/;

test("an exported name is defined in one file", () => {
  const files = new Map<string, string[]>();
  for (const { path, exports } of sources) {
    for (const name of new Set(exports)) files.set(name, [...(files.get(name) ?? []), path]);
  }
  const twice = [...files].filter(([name, where]) => where.length > 1 && !FRAMEWORK.has(name));
  expect(twice.map(([name, where]) => `${name}: ${where.join(", ")}`)).toEqual([]);
});

test(`a function has at most ${MAX_LINES} lines, or says why not`, () => {
  const long = sources.flatMap(({ path, functions }) =>
    functions
      .filter(({ lines, above }) => lines > MAX_LINES && !REASON.test(above))
      .map(({ name, line, lines }) => `${path}:${line} ${name}: ${lines}`),
  );
  expect(long).toEqual([]);
});
