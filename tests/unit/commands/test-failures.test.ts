import { expect, test } from "vitest";
import { playwrightFailures, vitestFailures } from "#tests/support/failures.mjs";

test("of vitest: each failed test with its file and the start of its message; a file that cannot be run counts too", () => {
  const report = {
    testResults: [
      {
        ...{ name: "/x/a.test.ts", status: "failed", message: "" },
        assertionResults: [
          { status: "passed", fullName: "adds", failureMessages: [] },
          {
            status: "failed",
            fullName: "subtracts",
            failureMessages: ["\u001B[31mexpected 1 to be 2\u001B[39m\n  at here"],
          },
        ],
      },
      { name: "/x/b.test.ts", status: "failed", message: "Cannot find module", assertionResults: [] },
      { name: "/x/c.test.ts", status: "passed", message: "", assertionResults: [] },
    ],
  };
  expect(vitestFailures(report)).toEqual([
    "  /x/a.test.ts: subtracts\n    expected 1 to be 2\n      at here",
    "  /x/b.test.ts\n    Cannot find module",
  ]);
});

test("of Playwright: specs in suites of suites, and what went wrong before any test", () => {
  const spec = (title: string, status: string, message: string) => ({
    ...{ file: "a.spec.ts", line: 3, title },
    tests: [{ status, results: [{ errors: message ? [{ message }] : [] }] }],
  });
  const report = {
    suites: [
      { specs: [spec("opens", "expected", "")], suites: [{ specs: [spec("closes", "unexpected", "not seen")] }] },
    ],
    errors: [{ message: "no server" }],
  };
  expect(playwrightFailures(report)).toEqual([
    "  a.spec.ts:3: closes\n    not seen",
    "  before any test\n    no server",
  ]);
});
