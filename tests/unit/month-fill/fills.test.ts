/** Fills of the running server: one at a time, the same month once, a bound on how many wait. */
import { expect, test } from "vitest";
import type { MonthFile } from "#lib/month/types.ts";
import type { ExplainedFill } from "#server/context/fills.ts";
import { createFills } from "#server/month-fill/fills.ts";
import { smallMonth } from "#tests/support/small-month.ts";

const FOUND = { answer: { before: 1 }, explained: [] } as unknown as ExplainedFill;
const month = (title: string): MonthFile => smallMonth({ title });

/** Threads that end when the test says so. */
function threads() {
  const running: { readonly title: string; readonly end: (error?: Error) => void }[] = [];
  const run = ({ title }: MonthFile) =>
    new Promise<ExplainedFill>((resolve, reject) => {
      running.push({ title, end: (error) => (error ? reject(error) : resolve(FOUND)) });
    });
  return { running, fills: createFills(run), turn: () => new Promise((resolve) => setImmediate(resolve)) };
}

test("one month after the other; the same one is worked out once and its answer kept", async () => {
  const { running, fills, turn } = threads();
  const [a, again, b] = [fills.fill(month("a")), fills.fill(month("a")), fills.fill(month("b"))];
  expect(again).toBe(a);
  await turn();
  expect(running.map(({ title }) => title)).toEqual(["a"]);
  running[0]?.end();
  expect(await a).toBe(FOUND);
  await turn();
  expect(running.map(({ title }) => title)).toEqual(["a", "b"]);
  running[1]?.end();
  await b;
  expect(fills.fill(month("a"))).toBe(a);
});

test("a fifth month is not taken on; after one has ended it is", async () => {
  const { running, fills, turn } = threads();
  const asked = ["a", "b", "c", "d"].map((title) => fills.fill(month(title)));
  expect(asked).not.toContain(undefined);
  expect(fills.fill(month("e"))).toBeUndefined();
  await turn();
  running[0]?.end();
  await asked[0];
  await turn();
  expect(fills.fill(month("e"))).toBeDefined();
});

test("a thread that breaks is told, holds nothing up, and is tried again", async () => {
  const { running, fills, turn } = threads();
  const [a, b] = [fills.fill(month("a")), fills.fill(month("b"))];
  await turn();
  const told = expect(a).rejects.toThrow("out of memory");
  running[0]?.end(new Error("out of memory"));
  await told;
  await turn();
  expect(running).toHaveLength(2);
  running[1]?.end();
  await b;
  expect(fills.fill(month("a"))).not.toBe(a);
});
