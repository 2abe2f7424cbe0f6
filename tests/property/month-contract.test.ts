/**
 * Two readings of the month file's contract give the same answers on random months: `lib/month`, and the plain one of
 * `tests/support/month-second-reading.ts`, which tries every choice of plans. Neither knows the other.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { monthFindings, monthSums } from "#lib/month/check/analyst.ts";
import { MONTH_RULES } from "#lib/month/check/registry.ts";
import { printCheck } from "#lib/month/file/print-check.ts";
import { printSums } from "#lib/month/file/print-sums.ts";
import { readMonthFile } from "#lib/month/file/read-month.ts";
import { fillMonth } from "#lib/month/fill/fill.ts";
import { often } from "#tests/support/long.ts";
import { printedValues, readCheck, readFill, readSums } from "#tests/support/month-second-reading.ts";
import { randomMonth, smallFill } from "#tests/support/random-months.ts";

const MINUTES = 900_000;
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

test("random months are valid month files", () => {
  fc.assert(
    fc.property(fc.oneof(randomMonth, smallFill), (month) => {
      expect(readMonthFile(JSON.stringify(month))).toEqual({ ok: true, month });
    }),
    { numRuns: often(60, 1000) },
  );
});

test(
  "both readings have the same sums",
  () => {
    fc.assert(
      fc.property(randomMonth, (month) => {
        expect(plain(printSums(monthSums(month)))).toEqual(plain(readSums(month)));
      }),
      { numRuns: often(60, 1500) },
    );
  },
  MINUTES,
);

test(
  "both readings find the same, in the same order, and every rule is met",
  () => {
    const met = new Set<string>();
    fc.assert(
      fc.property(randomMonth, (month) => {
        const found = readCheck(month);
        for (const { rule } of found) met.add(rule);
        const told = printCheck(monthFindings(month)).findings.map(({ message: _, ...rest }) => rest);
        expect(plain(told)).toEqual(plain(found.map(printedValues)));
      }),
      { numRuns: often(100, 2000), seed: often(1, Date.now()) },
    );
    expect(MONTH_RULES.map(({ id }) => id).filter((id) => !met.has(id))).toEqual([]);
  },
  MINUTES,
);

test(
  "the fill is the first of the cheapest of all choices",
  () => {
    let slots = 0;
    fc.assert(
      fc.property(smallFill, (month) => {
        const wanted = readFill(month);
        slots += wanted.slots.length;
        expect(plain(fillMonth(month))).toEqual(plain({ ...wanted, proven: true, bound: wanted.after }));
      }),
      { numRuns: often(50, 1000) },
    );
    expect(slots).toBeGreaterThan(often(25, 500));
  },
  MINUTES,
);
