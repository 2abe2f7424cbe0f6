/**
 * One figure, one source: what several places show of a class is gathered from each of them and compared as it is shown,
 * after rounding. The demo plans and seeded random classes.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { talkSums } from "#app/_rate/effect.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { balance } from "#lib/balance/balance.ts";
import { buildCard } from "#lib/card/card.ts";
import { crewRows } from "#lib/card/crew-sheet.ts";
import { sheetRows } from "#lib/card/sheet.ts";
import { classClock } from "#lib/clock/clock.ts";
import { freeSeconds, freeWords, ofLength } from "#lib/clock/length-words.ts";
import { classTalk, talkInClass, talkPercent } from "#lib/cues/class-talk.ts";
import { readThrough, sumsWords } from "#lib/cues/read-through.ts";
import { fitToLength } from "#lib/fit/fit.ts";
import { percent } from "#lib/formats/percent.ts";
import { classIntensity } from "#lib/intensity/intensity.ts";
import { countWords } from "#lib/margin/slips.ts";
import { clockTime, secondsWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { freeSpot } from "#lib/rail/drag.ts";
import { layoutRail } from "#lib/rail/layout.ts";
import { bothSides, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { levelCounts } from "#lib/rules/level-words.ts";
import { talkByItem } from "#lib/talk/talk.ts";
import { talkOver } from "#lib/talk/talk-words.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";
import { runPlanCommand } from "#server/cli/commands.ts";
import { often } from "#tests/support/long.ts";
import { laneOf, lanesOf } from "../lanes/support.ts";

/** Classes with times in tenths, planned changes, closings of a moment, and more to say than time. */
const randomClass: fc.Arbitrary<Plan> = fc
  .record({
    seconds: fc.array(fc.integer({ min: 10, max: 1200 }), { minLength: 1, maxLength: 8 }),
    planned: fc.option(fc.integer({ min: 0, max: 300 })),
    opening: fc.integer({ min: 0, max: 900 }),
    closing: fc.integer({ min: 0, max: 900 }),
    length: fc.integer({ min: 1, max: 50 }),
    words: fc.integer({ min: 0, max: 40 }),
  })
  .map(({ seconds, planned, opening, closing, length, words }) =>
    examplePlan(
      seconds.flatMap((tenths, i) => {
        const more = {
          seconds: tenths / 10,
          springs: { [i % 2 ? "heavy" : "light"]: 1 + (i % 2) },
          ...(planned === null ? {} : { transitionSeconds: planned / 10 }),
          script: words === 0 ? [] : [{ kind: "form" as const, text: "Keep the ribs down. ".repeat(words) }],
        };
        return i % 3 === 2 ? bothSides(`m${i}`, more, more) : [exampleMove(`m${i}`, more)];
      }),
      { openingSeconds: opening / 10, closingSeconds: closing / 10, lengthSeconds: length * 60 },
    ),
  );

const json = (plan: Plan, command: string): Record<string, unknown> => {
  const answered = runPlanCommand(command, plan);
  if (!answered.ok || !("json" in answered)) throw new Error("the command answers in JSON");
  return answered.json as Record<string, unknown>;
};
const cardOf = (plan: Plan) =>
  buildCard({
    studio: { name: "Tholepin Strength", town: "Port Ellery" },
    planId: "figures",
    number: 1,
    room: { id: "harbour", name: "Harbour room" },
    plan,
    issuedAt: 0,
    expiresAt: 86_400_000,
  });

/** A reader's own arithmetic on "m:ss" and "h:mm:ss". */
const secondsOf = (clock: string): number => clock.split(":").reduce((sum, part) => sum * 60 + Number(part), 0);
const allSame = <T>(figures: readonly T[]) => expect(new Set(figures).size, JSON.stringify(figures)).toBe(1);

function lengthAgrees(plan: Plan): void {
  const { total } = classClock(plan);
  const lanes = lanesOf(plan);
  allSame(
    [total, checkPlan(plan).total, cardOf(plan).clock.total, readThrough(plan).talk.total, lanes.total].map(clockTime),
  );
  allSame([total, json(plan, "clock").total, json(plan, "check").total, lanes.columns.at(-1)?.to ?? total]);
  const [is, slot] = ofLength(total, plan.lengthSeconds).split(" of ").map(secondsOf);
  const shown = (slot ?? 0) - (is ?? 0);
  // What a reader subtracts is what stands beside it; a difference that neither figure shows is below a second.
  if (shown !== 0) expect(freeSeconds(total, plan.lengthSeconds)).toBe(shown);
  else expect(Math.abs(freeSeconds(total, plan.lengthSeconds))).toBeLessThan(1);
  for (const { rule, message } of checkPlan(plan).findings.filter((f) => f.rule === "total-length")) {
    const [by] = freeWords(total, plan.lengthSeconds).split(/ (?:free|over)$/);
    expect(message, rule).toContain(by);
    expect(message).toContain(secondsWords(total));
  }
}

function talkAgrees(plan: Plan): void {
  const { track, total } = checkPlan(plan);
  const talk = classTalk(track, total);
  const { seconds, share, aside } = talk;
  allSame([seconds, readThrough(plan).talk.seconds, talkSums(plan).talk.seconds, json(plan, "cues").talkSeconds]);
  allSame([talkPercent(talk), talkPercent(talkSums(plan).talk), percent(Number(json(plan, "cues").talkShare))]);
  allSame([aside, readThrough(plan).talk.aside, (json(plan, "cues").dropped as unknown[]).length]);
  expect(sumsWords(readThrough(plan))).toContain(talkInClass(talk));
  // No talk and a share of it, or a share and no talk, is what a reader calls wrong.
  expect(Math.abs(share * total - seconds)).toBeLessThanOrEqual(0.0005 * total + 0.1);
  const spans = lanesOf(plan).lanes.flatMap((lane) => (lane.kind === "voice" ? lane.cells : []));
  const heard = spans.flatMap((cell) => cell.spans).reduce((sum, span) => sum + span.to - span.from, 0);
  // Both ends of each of some hundred spans are rounded to a tenth.
  expect(Math.abs(heard - seconds)).toBeLessThanOrEqual(1);
  expect(spans.reduce((sum, cell) => sum + cell.dropped, 0)).toBe(aside);
}

function itemsAgree(plan: Plan): void {
  const clock = classClock(plan);
  const { rows } = clock;
  const card = cardOf(plan);
  const at = new Map(rows.map((row) => [row.item, row]));
  const work = new Map(laneOf(lanesOf(plan).lanes, "work").cells.map((cell) => [cell.item, cell]));
  const crew = new Map(crewRows(card).map((row) => [row.id, row]));
  const talk = talkByItem(plan, clock);
  for (const row of sheetRows(card)) {
    const on = at.get(row.id);
    const [cell, crewRow] = [work.get(row.id), crew.get(row.id)];
    if (row.kind !== "move" || !on || !cell || crewRow?.kind !== "move") continue;
    allSame([row.start, on.start, cell.from, crewRow.start].map(clockTime));
    allSame([row.seconds, on.end - on.start, cell.to - cell.from, crewRow.seconds].map(secondsWords));
    allSame([row.change, on.start - on.transitionFrom, crewRow.start - crewRow.at].map(secondsWords));
    expect(talk.get(row.id)?.roomSeconds).toBeCloseTo(on.end - on.transitionFrom, 9);
  }
  const shares = new Map(laneOf(lanesOf(plan).lanes, "work").cells.map(({ item }) => [item, item && talk.get(item)]));
  for (const lane of lanesOf(plan).lanes) {
    if (lane.kind !== "talk") continue;
    for (const cell of lane.cells) {
      const of = shares.get(cell.item);
      const over = of ? talkOver(of) : 0;
      if (over > 0 && Number.isFinite(cell.share)) expect(cell.say).toContain(`${over} s more than fits`);
      else expect(cell.say).not.toContain("more than fits");
    }
  }
}

function countsAgree(plan: Plan): void {
  const { findings } = checkPlan(plan);
  const counts = levelCounts(findings);
  expect(counts.reduce((sum, { n }) => sum + n, 0)).toBe(findings.length);
  for (const { words } of counts) expect(countWords(findings, [])).toContain(words);
  const found = lanesOf(plan).lanes.flatMap((lane) => (lane.kind === "found" ? lane.cells : []));
  for (const { level, n } of counts) expect(found.reduce((sum, cell) => sum + cell[level], 0)).toBe(n);
  expect((json(plan, "check").findings as unknown[]).length).toBe(findings.length);
  expect(json(plan, "balance").setups).toEqual(balance(plan).setups);
}

function minutesAgree(plan: Plan): void {
  const { seconds, unknown } = classIntensity(plan);
  const all = Object.values(seconds).reduce((sum, one) => sum + one, unknown.seconds);
  expect(all).toBeCloseTo(classClock(plan).total, 6);
  const fit = fitToLength(plan);
  if (fit.possible) expect(freeWords(fit.total, plan.lengthSeconds)).toBe("to the second");
}

/** The clock at the rail's left, top to bottom, with the label of the slot's end. */
function railRunsDown(plan: Plan): void {
  const { rows, total } = classClock(plan);
  const items = plan.items.flatMap((item, i) => {
    const row = rows[i];
    return row ? [{ id: item.id, kind: item.kind, ...row }] : [];
  });
  const layout = layoutRail({ items, lengthSeconds: plan.lengthSeconds, total, scale: 1, needs: {} });
  const labels = layout.segments
    .filter(({ kind }) => kind === "move" || kind === "pause" || kind === "closing")
    .map((s) => ({ top: s.top, height: 20, seconds: s.from }));
  const end = { top: layout.lengthY - 10, height: 20, seconds: plan.lengthSeconds };
  const shown = [...labels, { ...end, top: freeSpot(end, labels) }].sort((a, b) => a.seconds - b.seconds);
  expect(shown.map(({ top }) => top)).toEqual(shown.map(({ top }) => top).toSorted((a, b) => a - b));
}

const CHECKS = { lengthAgrees, talkAgrees, itemsAgree, countsAgree, minutesAgree, railRunsDown };

describe.each(Object.entries(CHECKS))("%s", (_, check) => {
  test.each(Object.entries({ UPPER_BODY_AND_TRUNK, WHOLE_BODY, FIRST_TRY }))("in the demo plan %s", (_name, plan) => {
    check(plan);
  });
  test("[INV-21] in any class", () => {
    fc.assert(
      fc.property(randomClass, (plan) => {
        check(plan);
      }),
      { seed: 11, numRuns: often(5, 12) },
    );
  });
});

test("a class with no script of its own still has the talk of its calls, and says so everywhere", () => {
  const plan = examplePlan([
    exampleMove("a", { script: [] }),
    exampleMove("b", { script: [] }),
    exampleMove("c", { script: [] }),
  ]);
  const { track, total } = checkPlan(plan);
  const talk = classTalk(track, total);
  expect(talk.seconds).toBeGreaterThan(0);
  expect(talkPercent(talk)).not.toBe("0%");
});
