/** What failed, read from the reports of vitest and Playwright, so that it can be said once more where a log ends. */

const LINES_OF_A_MESSAGE = 12;
// What the runners colour for a terminal.
// biome-ignore lint/suspicious/noControlCharactersInRegex: an escape sequence begins with one
const COLOURS = /\u001B\[[0-9;]*m/g;

const short = (message) =>
  message
    .replace(COLOURS, "")
    .split("\n")
    .slice(0, LINES_OF_A_MESSAGE)
    .map((line) => `    ${line}`)
    .join("\n");

const told = (where, messages) => [`  ${where}`, ...messages.map(short)].join("\n");

/** Of a report by vitest's `json` reporter: one text for each test that failed, and for each file that could not be run. */
export function vitestFailures(report) {
  return report.testResults.flatMap((file) => {
    const tests = file.assertionResults.filter(({ status }) => status === "failed");
    if (tests.length === 0 && file.status === "failed") return [told(file.name, [file.message])];
    return tests.map((test) => told(`${file.name}: ${test.fullName}`, test.failureMessages));
  });
}

function specsOf(suite) {
  return [...(suite.specs ?? []), ...(suite.suites ?? []).flatMap(specsOf)];
}

/** Of a report by Playwright's `json` reporter: one text for each test that failed, or passed only at a second try. */
export function playwrightFailures(report) {
  const specs = report.suites.flatMap(specsOf);
  const failed = specs.filter(({ tests }) => tests.some(({ status }) => status === "unexpected" || status === "flaky"));
  const tests = failed.map((spec) => {
    const errors = spec.tests.flatMap(({ results }) => results.flatMap((result) => result.errors ?? []));
    return told(
      `${spec.file}:${spec.line}: ${spec.title}`,
      errors.map((error) => error.message ?? error.value ?? ""),
    );
  });
  return [...tests, ...(report.errors ?? []).map((error) => told("before any test", [error.message ?? ""]))];
}
