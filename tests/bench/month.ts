/**
 * How long a month takes: everything worked out from one that nobody has looked at, and after one change. 12 coaches, 400
 * slots, 60 plans. Beside it the peer of `month-sql.ts`, which is asked for the sums, the likeness and the clashes only; both must
 * agree. Then the exact fill beside an integer program of the same week. Exit 1 when a target is missed; ends with an exception when they differ.
 */
import { weekText } from "#lib/calendar/days.ts";
import { MonthAnalyst, type MonthLook } from "#lib/month/check/analyst.ts";
import { ClassReader } from "#lib/month/check/classes.ts";
import { fillMonth } from "#lib/month/fill/fill.ts";
import { COST_UNIT } from "#lib/month/fill/fill-types.ts";
import { emptyPicks, fillProblem } from "#lib/month/fill/problem.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { fillAndProve, provenFill } from "#server/month-fill/prove.ts";
import { solver } from "#server/month-fill/solve.ts";
import { busyMonth } from "#tests/support/busy-month.ts";
import { Dice } from "#tests/support/dice.ts";
import { studioWeek } from "#tests/support/studio-week.ts";
import { MonthInSql } from "./month-sql.ts";
import { spread, taken } from "./timing.ts";

const SIZES = { coaches: 12, slots: 400, plans: 60 };
const ROUNDS = 200;
const FRESH_RATIO = 1;
const CHANGE_RATIO = 4;
const FILL_ROUNDS = 12;
const FILL_RATIO = 1;
let allMet = true;

const month = busyMonth(SIZES);
const { classes } = new ClassReader().read(month);
const sqlOf = (of: MonthFile) => new MonthInSql(of, classes, ({ date }) => weekText(date));

function agree(look: MonthLook, sql: ReturnType<MonthInSql["ask"]>): void {
  const regulars = Object.values(look.sums.regulars);
  const seconds = regulars.flatMap(({ days }) => days.flatMap(({ groups }) => Object.values(groups)));
  const like = regulars.flatMap(({ neighbours }) => neighbours.map(({ likeness }) => likeness ?? 0));
  const total = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0);
  const pairs = [
    [seconds.length, sql.days],
    [total(seconds), sql.work],
    [total(like), sql.likeness],
  ] as const;
  for (const [own, theirs] of pairs)
    if (Math.abs(own - theirs) > 1e-6 * theirs) throw new Error(`the sums differ: ${own} and ${theirs}`);
}

function compare(what: string, own: readonly number[], peer: readonly number[], atLeast: number): void {
  const [a, b] = [spread(own), spread(peer)];
  const ratio = b.p50 / a.p50;
  const met = ratio >= atLeast;
  allMet &&= met;
  console.log(`${what}: p50 ${a.p50.toFixed(2)} ms, p99 ${a.p99.toFixed(2)} ms; SQLite p50 ${b.p50.toFixed(2)} ms`);
  console.log(`  target: times quicker at least ${atLeast}; ${ratio.toFixed(1)}. ${met ? "met" : "missed"}.`);
}

function fresh(): void {
  const [own, peer] = [[] as number[], [] as number[]];
  for (let i = 0; i < ROUNDS; i++) {
    const copy = structuredClone(month);
    const look = taken(() => new MonthAnalyst().look(copy));
    const sql = taken(() => {
      const db = sqlOf(copy);
      const answer = db.ask();
      db.close();
      return answer;
    });
    agree(look.value, sql.value);
    own.push(look.ms);
    peer.push(sql.ms);
  }
  compare(`${SIZES.slots} slots that nobody has looked at`, own.slice(ROUNDS / 4), peer.slice(ROUNDS / 4), FRESH_RATIO);
}

function changed(): void {
  const [dice, analyst, db] = [new Dice(5), new MonthAnalyst(), sqlOf(month)];
  const [own, peer] = [[] as number[], [] as number[]];
  let now = month;
  analyst.look(now);
  for (let i = 0; i < ROUNDS; i++) {
    const [one, plan] = [dice.one(classes).id, `plan-${dice.upTo(SIZES.plans)}`];
    if (!now.slots.some(({ id }) => id === one)) continue;
    now = { ...now, slots: now.slots.map((slot) => (slot.id === one ? { ...slot, plan } : slot)) };
    const look = taken(() => analyst.look(now));
    const sql = taken(() => {
      db.givePlan(one, plan);
      return db.ask();
    });
    agree(look.value, sql.value);
    own.push(look.ms);
    peer.push(sql.ms);
  }
  compare("after another plan in one slot", own.slice(ROUNDS / 4), peer.slice(ROUNDS / 4), CHANGE_RATIO);
}

/** The exact search beside HiGHS on the same months; both must have the same least cost. */
async function filled(): Promise<void> {
  await solver();
  const [own, peer] = [[] as number[], [] as number[]];
  for (let seed = 1; seed <= FILL_ROUNDS; seed++) {
    const week = studioWeek({ slots: 7, plans: 6, regulars: 2, seed });
    const exact = taken(() => fillMonth(week));
    const begun = performance.now();
    const problem = fillProblem(week);
    const picks = emptyPicks(problem.sizes);
    const nothing = { picks, cost: problem.costOf(picks), proven: false, bound: Number.NEGATIVE_INFINITY };
    const solved = await provenFill(problem, nothing);
    peer.push(performance.now() - begun);
    own.push(exact.ms);
    if (solved.bound / COST_UNIT !== exact.value.after) throw new Error(`the least costs differ in week ${seed}`);
  }
  const [a, b] = [spread(own), spread(peer)];
  const met = b.p50 / a.p50 >= FILL_RATIO;
  allMet &&= met;
  console.log(`7 slots from 6 plans, exactly: p50 ${a.p50.toFixed(0)} ms; HiGHS p50 ${b.p50.toFixed(0)} ms`);
  console.log(
    `  target: times quicker at least ${FILL_RATIO}; ${(b.p50 / a.p50).toFixed(1)}. ${met ? "met" : "missed"}.`,
  );
  const begun = performance.now();
  const large = await fillAndProve(studioWeek({ slots: 30, plans: 20, regulars: 10, mostUses: 2 }));
  console.log(`30 slots from 20 plans: ${(performance.now() - begun).toFixed(0)} ms, proven ${large.proven}`);
  allMet &&= large.proven;
}

fresh();
changed();
await filled();
process.exit(allMet ? 0 : 1);
