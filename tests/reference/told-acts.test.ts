/**
 * What the reader makes of set-up talk, against labels written for this project by someone who did not see the reader: see
 * `tests/fixtures/told-acts`. Half of the sentences are for working with; of the other half only counts are shown.
 * SPRINGLINE_CORPUS=all shows every wrong case of the working half instead of the first 40.
 */
import { describe, expect, it } from "vitest";
import { planActs } from "#lib/acts/plan-acts.ts";
import { type GotAct, inWords, Score, scoreMissing, scoreTold } from "#tests/support/score-acts.ts";
import { CHANGED, endsOf, halfOf, planOfChange, SET_UPS, type SetUpCase } from "#tests/support/told-acts.ts";

const SHOWN = process.env.SPRINGLINE_CORPUS === "all" ? Number.POSITIVE_INFINITY : 40;
const AT_LEAST = 0.85;

function judged({ change, lines, told, missing, open }: SetUpCase) {
  const row = planActs(planOfChange(change, lines)).find(({ item }) => item === CHANGED);
  const got = { told: (row?.told ?? []) as readonly GotAct[], missing: row?.missing ?? [] };
  return {
    told: scoreTold(told, got.told, endsOf(change)),
    missing: scoreMissing({ missing, open }, got.missing),
  };
}

const list = (acts: Parameters<typeof inWords>[0][]): string =>
  acts.length > 0 ? acts.map(inWords).join("; ") : "nothing";

function readable(one: SetUpCase): string[] {
  const { told, missing } = judged(one);
  const wrongs = [told.missed, told.spurious, missing.missed, missing.spurious];
  if (wrongs.every(({ length }) => length === 0)) return [];
  return [
    `${one.id} (${one.habit}) “${one.lines.join(" / ")}”`,
    ...(told.missed.length + told.spurious.length > 0
      ? [`  acts wanted and not found: ${list([...told.missed])}; found and not wanted: ${list([...told.spurious])}`]
      : []),
    ...(missing.missed.length + missing.spurious.length > 0
      ? [`  missing, not found: ${list([...missing.missed])}; found and not missing: ${list([...missing.spurious])}`]
      : []),
  ];
}

describe.each(["working", "unseen"] as const)("the %s half", (half) => {
  const cases = SET_UPS.filter(({ id }) => halfOf(id) === half);
  const scores = { told: new Score(), missing: new Score() };
  for (const one of cases) {
    const { told, missing } = judged(one);
    scores.told.add(told);
    scores.missing.add(missing);
  }

  it("is read with the precision and the recall that are aimed at", () => {
    console.log(`${half}, ${cases.length} set-ups\n  told: ${scores.told}\n  missing: ${scores.missing}`);
    const wrong = half === "working" ? cases.map(readable).filter(({ length }) => length > 0) : [];
    for (const lines of wrong.slice(0, SHOWN)) console.log(lines.join("\n"));
    if (wrong.length > SHOWN) console.log(`and ${wrong.length - SHOWN} more: SPRINGLINE_CORPUS=all shows them`);
    for (const score of [scores.told, scores.missing]) {
      expect(score.recall).toBeGreaterThanOrEqual(AT_LEAST);
      expect(score.precision).toBeGreaterThanOrEqual(AT_LEAST);
    }
  });
});
