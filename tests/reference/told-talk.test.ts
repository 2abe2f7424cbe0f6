/**
 * What says-otherwise makes of claims in the talk (time, minutes, rounds, next, last, repetitions, breath), against labels
 * written for this project by someone who did not see the reader: see `tests/fixtures/told-acts`. Of the unseen half only
 * counts are shown; SPRINGLINE_CORPUS=all shows every wrong case of the other.
 */
import { describe, expect, it } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { classClock } from "#lib/clock/clock.ts";
import { ruleById } from "#lib/rules/registry.ts";
import { Score } from "#tests/support/score-acts.ts";
import { halfOf } from "#tests/support/told-acts.ts";
import { planOfTalk, SAID_IN, TALK, TALK_CONTEXTS, type TalkCase, type TalkContext } from "#tests/support/told-talk.ts";

const SHOWN = process.env.SPRINGLINE_CORPUS === "all" ? Number.POSITIVE_INFINITY : 40;
const AT_LEAST = 0.85;
const MOST_FLAGGED = 0.01;

function contextOf({ context }: TalkCase): TalkContext {
  const known = TALK_CONTEXTS[context];
  if (!known) throw new Error(`There is no context "${context}".`);
  return known;
}

function isFlagged(one: TalkCase): boolean {
  const rule = ruleById("says-otherwise");
  if (!rule) throw new Error("There is no rule says-otherwise.");
  return checkPlan(planOfTalk(contextOf(one), one), [rule]).findings.some(({ items }) => items.includes(SAID_IN));
}

describe("the labels", () => {
  it("are at least 260, each with its own id and sentence, and at least half of them true", () => {
    expect(TALK.length).toBeGreaterThanOrEqual(260);
    expect(new Set(TALK.map(({ id }) => id)).size).toBe(TALK.length);
    expect(new Set(TALK.map(({ context, at, text }) => `${context} ${at} ${text}`)).size).toBe(TALK.length);
    expect(TALK.filter(({ contradicts }) => !contradicts).length).toBeGreaterThanOrEqual(TALK.length / 2);
  });

  it.each(Object.entries(TALK_CONTEXTS))("stand in a class that is as context %s says", (_id, context) => {
    const plan = planOfTalk(context);
    const { rows, total } = classClock(plan);
    const place = rows.findIndex(({ item }) => item === SAID_IN);
    expect(total).toBe(plan.lengthSeconds);
    expect(total - (rows[place]?.start ?? 0)).toBe(context.leftSeconds);
    const moves = plan.items.flatMap((item) => (item.kind === "move" ? [item] : []));
    const nth = moves.findIndex(({ id }) => id === SAID_IN);
    expect(nth === 0).toBe(context.first ?? false);
    const after = moves[nth + 1];
    expect(after ? (plan.moves[after.move]?.name ?? "") : null).toBe(context.next);
  });
});

describe.each(["working", "unseen"] as const)("the %s half", (half) => {
  const cases = TALK.filter(({ id }) => halfOf(id) === half).map((one) => ({ ...one, flagged: isFlagged(one) }));

  it(`is judged with a precision of at least ${AT_LEAST} and a recall of at least ${AT_LEAST}`, () => {
    const score = new Score();
    const of = (contradicts: boolean, flagged: boolean) =>
      cases.filter((one) => one.contradicts === contradicts && one.flagged === flagged);
    score.add({ hits: of(true, true).length, missed: of(true, false), spurious: of(false, true) });
    console.log(`${half}, ${cases.length} sentences: ${score}`);
    const wrong = half === "working" ? [...of(false, true), ...of(true, false)] : [];
    for (const one of wrong.slice(0, SHOWN)) {
      const wanted = one.contradicts ? `contradicts (${one.claim}), not found` : "true, found";
      console.log(`${one.id} at ${one.at} s “${one.text}”: ${wanted}`);
    }
    expect(score.precision).toBeGreaterThanOrEqual(AT_LEAST);
    expect(score.recall).toBeGreaterThanOrEqual(AT_LEAST);
  });
});

it("at most one true sentence in a hundred is found", () => {
  const truths = TALK.filter(({ contradicts }) => !contradicts);
  const flagged = truths.filter(isFlagged).length;
  console.log(`${flagged} of ${truths.length} true sentences found`);
  expect(flagged / truths.length).toBeLessThanOrEqual(MOST_FLAGGED);
});
