/**
 * How long a month takes: everything worked out from one that nobody has looked at, and after one change. 12 coaches, 400
 * slots, 60 plans. Beside it the peer of `month-sql.ts`, which is asked for the sums, the likeness and the clashes only; both must
 * agree. Exit 1 when a target is missed; ends with an exception when they differ.
 */
import { weekText } from "#lib/calendar/days.ts";
import { MonthAnalyst, type MonthLook } from "#lib/month/check/analyst.ts";
import { ClassReader } from "#lib/month/check/classes.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { busyMonth } from "#tests/support/busy-month.ts";
import { Dice } from "#tests/support/dice.ts";
import { MonthInSql } from "./month-sql.ts";
import { spread, taken } from "./timing.ts";

const SIZES = { coaches: 12, slots: 400, plans: 60 };
const ROUNDS = 200;
const FRESH_RATIO = 1;
const CHANGE_RATIO = 4;
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

fresh();
changed();
process.exit(allMet ? 0 : 1);
