/**
 * The peer of the month's arithmetic: the same sums asked of a general-purpose database, SQLite in memory. Instants are given
 * to it, words and most rules are not asked of it.
 */
import Database from "better-sqlite3";
import type { MonthClass } from "#lib/month/sums-types.ts";
import type { MonthFile } from "#lib/month/types.ts";

const TABLES = `
  create table class (id text primary key, room text, coach text, date text, week text, begins int, ends int, minutes int, plan text);
  create table member (class text, regulars text);
  create table plan (id text primary key, talk real, met real);
  create table work (plan text, part text, seconds real);
  create table moved (plan text, move text, seconds real);
  create index member_of on member (regulars, class);
  create index member_in on member (class);
  create index work_of on work (plan, part);
  create index moved_of on moved (plan, move);
  create index class_room on class (room, begins);
  create index class_coach on class (coach, begins);`;

const DAYS = `select m.regulars, c.date, w.part, sum(w.seconds) s from member m join class c on c.id = m.class
  join work w on w.plan = c.plan where w.seconds > 0 group by 1, 2, 3`;
const WEEKS = `select m.regulars, c.week, count(distinct v.move) n, sum(v.seconds) s from member m join class c on c.id = m.class
  join moved v on v.plan = c.plan where v.seconds > 0 group by 1, 2`;
const COACHES = `select c.coach, c.date, count(*) n, sum(c.minutes) minutes, sum(p.talk) talk from class c
  left join plan p on p.id = c.plan where c.coach is not null group by 1, 2`;
const clashes = (of: string): string => `select a.id one, b.id other from class a join class b on a.${of} = b.${of}
  where (a.begins, a.id) < (b.begins, b.id) and b.begins < a.ends`;
/** Every two neighbours of all regulars with their likeness. */
const LIKE = `
  with seat as (select m.regulars, c.id, c.plan, lead(c.plan) over next as other, lead(c.id) over next as follows
      from member m join class c on c.id = m.class window next as (partition by m.regulars order by c.begins, c.id)),
    pair as (select distinct plan a, other b from seat where follows is not null and plan is not null and other is not null),
    moves as (select plan, sum(seconds) s from moved group by 1), parts as (select plan, sum(seconds) s from work group by 1),
    shared as (select a, b, (select coalesce(sum(min(x.seconds, y.seconds)), 0) from moved x join moved y on y.move = x.move
        where x.plan = a and y.plan = b) least,
      (select coalesce(sum(min(x.seconds / p.s, y.seconds / q.s)), 0) from work x join work y on y.part = x.part
        join parts p on p.plan = a join parts q on q.plan = b where x.plan = a and y.plan = b) groups from pair)
  select seat.id, (least / (p.s + q.s - least) + groups) / 2 likeness from seat
    join shared on shared.a = seat.plan and shared.b = seat.other join moves p on p.plan = a join moves q on q.plan = b`;

export class MonthInSql {
  private readonly db = new Database(":memory:");

  constructor(month: MonthFile, classes: readonly MonthClass[], weekOf: (one: MonthClass) => string) {
    this.db.exec(TABLES);
    const put = (table: string, n: number) =>
      this.db.prepare(`insert into ${table} values (${Array(n).fill("?").join(", ")})`);
    const [intoClass, intoMember, intoPlan] = [put("class", 9), put("member", 2), put("plan", 3)];
    const [intoWork, intoMoved] = [put("work", 3), put("moved", 3)];
    this.db.transaction(() => {
      for (const one of classes) {
        const { room = null, coach = null, minutes, regulars = [], plan = null } = one.slot;
        intoClass.run(one.id, room, coach, one.date, weekOf(one), one.from, one.to, minutes, plan);
        for (const id of regulars) intoMember.run(one.id, id);
      }
      for (const [id, plan] of Object.entries(month.plans)) {
        if (plan.known === false) continue;
        intoPlan.run(id, plan.talkSeconds, plan.metMinutes);
        for (const [part, seconds] of Object.entries(plan.groups)) intoWork.run(id, part, seconds);
        for (const [move, seconds] of Object.entries(plan.moves)) intoMoved.run(id, move, seconds);
      }
    })();
  }

  givePlan(id: string, plan: string): void {
    this.db.prepare("update class set plan = ? where id = ?").run(plan, id);
  }

  /** What can be compared: how many sums and clashes, and the sums of all work and of all likeness. */
  ask(): { readonly days: number; readonly work: number; readonly clashes: number; readonly likeness: number } {
    const all = (sql: string) => this.db.prepare(sql).all() as Record<string, number>[];
    const total = (rows: Record<string, number>[], key: string): number =>
      rows.reduce((sum, row) => sum + (row[key] ?? 0), 0);
    const days = all(DAYS);
    all(WEEKS);
    all(COACHES);
    const twice = all(clashes("room")).length + all(clashes("coach")).length;
    return { days: days.length, work: total(days, "s"), clashes: twice, likeness: total(all(LIKE), "likeness") };
  }

  close(): void {
    this.db.close();
  }
}
