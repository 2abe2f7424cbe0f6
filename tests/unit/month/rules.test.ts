/** Every rule of the month: true and false at the exact bound, its id, slots and values; levels; what `asOf` leaves out. */
import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { monthFindings } from "#lib/month/check/analyst.ts";
import { MONTH_RULES } from "#lib/month/check/registry.ts";
import type { MonthFile, MonthFinding, MonthSlot } from "#lib/month/types.ts";
import { limitsOf } from "#lib/rules/limits.ts";
import { smallMonth, smallPlan, smallSlot } from "#tests/support/small-month.ts";

const found = (rule: string, month: MonthFile): MonthFinding[] =>
  monthFindings(month).filter((finding) => finding.rule === rule);
const ids = (rule: string, month: MonthFile): string[] => found(rule, month).map(({ id }) => id);
const month = (slots: readonly MonthSlot[], more: Partial<MonthFile> = {}) => smallMonth({ slots, ...more });
const slot = smallSlot;
/** Two slots of the regulars, on the days and at the times given. */
const early = (id: string, date: string, more: Partial<MonthSlot> = {}) =>
  slot(id, { date, regulars: ["early"], ...more });

interface Bound {
  readonly rule: string;
  readonly yes: MonthFile;
  /** Just short of the bound. */
  readonly no: MonthFile;
  readonly id: string;
  readonly slots: readonly string[];
  readonly values: Readonly<Record<string, unknown>>;
}

const halves = (hours: number) => ({ "upper-back": hours });
const heavy = smallPlan({ groups: { chest: 300 } });
const moves = (n: number) => Object.fromEntries(Array.from({ length: n }, (_, i) => [`m${i}`, 10]));
const week = (plan: string) => [early("a", "2026-04-06", { plan }), early("b", "2026-04-08", { plan })];

const BOUNDS: readonly Bound[] = [
  {
    rule: "room-clash",
    yes: month([slot("b", { start: "10:44" }), slot("a")]),
    no: month([slot("b", { start: "10:45" }), slot("a")]),
    ...{ id: "loft:a+b", slots: ["a", "b"], values: { minutes: 1 } },
  },
  {
    rule: "coach-clash",
    yes: month([slot("a", { room: null }), slot("b", { room: null, start: "10:30", minutes: 5 })]),
    no: month([slot("a"), slot("b", { start: "10:30", out: true })]),
    ...{ id: "marta:a+b", slots: ["a", "b"], values: { minutes: 5 } },
  },
  {
    rule: "coach-away",
    yes: month([slot("a")], {
      coaches: { marta: { name: "Marta", roles: ["coach"], away: [{ from: "2026-04-01", to: "2026-04-06" }] } },
    }),
    no: month([slot("a")], {
      coaches: { marta: { name: "Marta", roles: ["coach"], away: [{ from: "2026-04-01", to: "2026-04-05" }] } },
    }),
    ...{ id: "a", slots: ["a"], values: { why: "away" } },
  },
  {
    rule: "coach-away",
    yes: month([slot("a")], {
      coaches: { marta: { name: "Marta", roles: ["coach"], free: [{ days: [1], from: "10:00", to: "10:44" }] } },
    }),
    no: month([slot("a")], {
      coaches: { marta: { name: "Marta", roles: ["coach"], free: [{ days: [1], from: "10:00", to: "10:45" }] } },
    }),
    ...{ id: "a", slots: ["a"], values: { why: "hours" } },
  },
  {
    rule: "more-people-than-machines",
    yes: month([slot("a", { regulars: ["early", "late"] })], {
      regulars: { early: { name: "E", people: 9 }, late: { name: "L" } },
    }),
    no: month([slot("a", { regulars: ["early"], people: 8 })], { regulars: { early: { name: "E", people: 9 } } }),
    ...{ id: "a", slots: ["a"], values: { people: 9, machines: 8 } },
  },
  {
    rule: "other-equipment",
    yes: month([slot("a")], { plans: { a: smallPlan({ equipment: "short-rail" }) } }),
    no: month([slot("a", { room: null })], { plans: { a: smallPlan({ equipment: "short-rail" }) } }),
    ...{ id: "a", slots: ["a"], values: { plan: "short-rail", room: "long-rail" } },
  },
  {
    rule: "plan-too-long",
    yes: month([slot("a")], { plans: { a: smallPlan({ seconds: 2700.5 }) } }),
    no: month([slot("a")], { plans: { a: smallPlan({ seconds: 2700 }) } }),
    ...{ id: "a", slots: ["a"], values: { seconds: 0.5 } },
  },
  {
    rule: "no-coach",
    yes: month([slot("a", { coach: null })]),
    no: month([slot("a")]),
    id: "a",
    slots: ["a"],
    values: {},
  },
  {
    rule: "no-room",
    yes: month([slot("a", { room: null })]),
    no: month([slot("a")]),
    id: "a",
    slots: ["a"],
    values: {},
  },
  {
    rule: "no-plan",
    yes: month([slot("a", { plan: null })]),
    no: month([slot("a")]),
    id: "a",
    slots: ["a"],
    values: {},
  },
  {
    rule: "unsigned-plan",
    yes: month([slot("a")], { plans: { a: smallPlan({ signed: false }) } }),
    no: month([slot("a")], { plans: { a: { title: "", known: false } } }),
    ...{ id: "a", slots: ["a"], values: {} },
  },
  {
    rule: "plan-unknown",
    yes: month([slot("a")], { plans: { a: { title: "", known: false } } }),
    no: month([slot("a", { plan: null })]),
    ...{ id: "a", slots: ["a"], values: {} },
  },
  {
    rule: "coach-role",
    yes: month([slot("a")], { coaches: { marta: { name: "Marta", roles: ["manager", "trainee"] } } }),
    no: month([slot("a")], { coaches: { marta: { name: "Marta", roles: ["lead"] } } }),
    ...{ id: "a", slots: ["a"], values: {} },
  },
  {
    // 10:45 to 10:45 two days later is 48 h.
    rule: "short-recovery",
    yes: month([early("a", "2026-04-06"), early("b", "2026-04-08", { start: "10:44" })], { plans: { a: heavy } }),
    no: month([early("a", "2026-04-06"), early("b", "2026-04-08", { start: "10:45" })], { plans: { a: heavy } }),
    ...{ id: "early:chest:2026-04-08", slots: ["a", "b"], values: { minutes: 2879, least: 2880 } },
  },
  {
    rule: "short-recovery",
    yes: month(week("a"), { plans: { a: heavy }, limits: { recoveryBy: { chest: 47.5 }, heavyBy: { chest: 300 } } }),
    no: month(week("a"), { plans: { a: heavy }, limits: { heavyBy: { chest: 300.1 }, recoveryHours: 100 } }),
    ...{ id: "early:chest:2026-04-08", slots: ["a", "b"], values: { minutes: 2835, least: 2850 } },
  },
  {
    rule: "heavy-twice-a-day",
    yes: month([early("a", "2026-04-06"), early("b", "2026-04-06", { start: "18:00" })], { plans: { a: heavy } }),
    no: month([early("a", "2026-04-06"), early("b", "2026-04-06", { start: "18:00" })], {
      plans: { a: smallPlan({ groups: { chest: 299.9 } }) },
    }),
    ...{ id: "early:chest:2026-04-06", slots: ["a", "b"], values: { seconds: 600 } },
  },
  {
    // 8 of 10 moves are shared.
    rule: "too-alike",
    yes: month([early("a", "2026-04-06"), early("b", "2026-04-07", { plan: "b" })], {
      plans: { a: smallPlan({ moves: moves(8) }), b: smallPlan({ moves: moves(10) }) },
    }),
    no: month([early("a", "2026-04-06"), early("b", "2026-04-07", { plan: "b" })], {
      plans: { a: smallPlan({ moves: moves(7) }), b: smallPlan({ moves: moves(9) }) },
    }),
    ...{ id: "early:a+b", slots: ["a", "b"], values: { likeness: 0.8 } },
  },
  {
    rule: "week-rises-much",
    yes: month([early("a", "2026-04-06"), early("b", "2026-04-13", { plan: "b" })], {
      plans: { a: smallPlan({ groups: { chest: 100 } }), b: smallPlan({ groups: { calves: 130.01 } }) },
    }),
    no: month([early("a", "2026-04-06"), early("b", "2026-04-13", { plan: "b" })], {
      plans: { a: smallPlan({ groups: { chest: 100 } }), b: smallPlan({ groups: { calves: 130 } }) },
    }),
    ...{ id: "early:2026-W16", slots: ["b"], values: { change: expect.closeTo(0.3001, 9) } },
  },
  {
    rule: "little-variety",
    yes: month([...week("a"), early("c", "2026-04-09", { plan: null })], {
      plans: { a: smallPlan({ moves: moves(15) }) },
    }),
    no: month(week("a"), { plans: { a: smallPlan({ moves: moves(16) }) } }),
    ...{ id: "early:2026-W15", slots: ["a", "b"], values: { distinct: 15 } },
  },
  {
    rule: "theme-promise-missed",
    yes: month([slot("a", { theme: "pull" })], { themes: { pull: { name: "Pull", promised: 2 } } }),
    no: month([slot("a", { theme: "pull" })], { themes: { pull: { name: "Pull", promised: 1 } } }),
    ...{ id: "pull", slots: ["a"], values: { promised: 2, have: 1 } },
  },
  {
    rule: "theme-not-kept",
    yes: month([slot("a", { theme: "pull" })], {
      themes: { pull: { name: "Pull", shares: halves(0.5) } },
      plans: { a: smallPlan({ groups: { "upper-back": 99, chest: 101 } }) },
    }),
    no: month([slot("a", { theme: "pull" })], {
      themes: { pull: { name: "Pull", shares: halves(0.3) } },
      // 0.1 / (0.1 + 0.2 + ...) is a little under 0.3 in binary.
      plans: { a: smallPlan({ groups: { "upper-back": 0.3, chest: 0.6, calves: 0.1 } }) },
    }),
    ...{ id: "a", slots: ["a"], values: { short: { "upper-back": 0.495 } } },
  },
  {
    rule: "coach-long-day",
    yes: month([slot("a", { minutes: 120 }), slot("b", { start: "14:00", minutes: 121 })]),
    no: month([slot("a", { minutes: 120 }), slot("b", { start: "14:00", minutes: 120 })]),
    ...{ id: "marta:2026-04-06", slots: ["a", "b"], values: { minutes: 241 } },
  },
  {
    rule: "coach-talks-long",
    yes: month([slot("a")], { plans: { a: smallPlan({ talkSeconds: 5400.1 }) } }),
    no: month([slot("a")], { plans: { a: smallPlan({ talkSeconds: 5400 }) } }),
    ...{ id: "marta:2026-04-06", slots: ["a"], values: { seconds: 5400.1 } },
  },
  {
    rule: "coach-gap-short",
    yes: month([slot("a"), slot("b", { start: "10:59" })]),
    no: month([slot("a"), slot("b", { start: "11:00" })]),
    ...{ id: "marta:a+b", slots: ["a", "b"], values: { minutes: 14 } },
  },
  {
    rule: "coach-rest-short",
    yes: month([slot("a", { start: "20:00", minutes: 60 }), slot("b", { date: "2026-04-07", start: "07:59" })]),
    no: month([slot("a", { start: "20:00", minutes: 60 }), slot("b", { date: "2026-04-07", start: "08:00" })]),
    ...{ id: "marta:a+b", slots: ["a", "b"], values: { minutes: 659 } },
  },
  {
    // Lisbon, 29 March 2026: 01:00 to 01:59 are skipped.
    rule: "time-skipped",
    yes: month([slot("a", { date: "2026-03-29", start: "01:59" })], {
      dates: { from: "2026-03-01", to: "2026-03-31" },
    }),
    no: month([slot("a", { date: "2026-03-29", start: "02:00" })], { dates: { from: "2026-03-01", to: "2026-03-31" } }),
    ...{ id: "a", slots: ["a"], values: {} },
  },
  {
    // Lisbon, 25 October 2026: 01:00 to 01:59 come twice.
    rule: "time-twice",
    yes: month([slot("a", { date: "2026-10-25", start: "01:00" })], {
      dates: { from: "2026-10-01", to: "2026-10-31" },
    }),
    no: month([slot("a", { date: "2026-10-25", start: "02:00" })], { dates: { from: "2026-10-01", to: "2026-10-31" } }),
    ...{ id: "a", slots: ["a"], values: {} },
  },
  {
    rule: "on-a-holiday",
    yes: month([slot("a")], { holidays: { "2026-04-06": "Easter Monday" } }),
    no: month([slot("a", { out: true })], { holidays: { "2026-04-06": "Easter Monday" } }),
    ...{ id: "a", slots: ["a"], values: {} },
  },
];

describe("at the bound", () => {
  test.each(BOUNDS.map((bound) => [`${bound.rule} ${bound.id}`, bound] as const))(
    "%s",
    (_, { rule, yes, no, id, slots, values }) => {
      const [finding, ...others] = found(rule, yes);
      expect(others).toEqual([]);
      expect(finding).toMatchObject({ id: `${rule}:${id}`, slots });
      expect(finding?.values).toEqual(
        Object.fromEntries(
          Object.entries(values).map(([key, v]) => [key, typeof v === "number" ? expect.closeTo(v, 9) : v]),
        ),
      );
      expect(found(rule, no)).toEqual([]);
    },
  );

  test.each(BOUNDS.map((bound) => [bound.rule, bound] as const))("%s speaks in short sentences", (rule, { yes }) => {
    for (const { message } of found(rule, yes)) {
      expect(message).toMatch(/^[A-Z][^\n{}]{20,180}\.$/);
      expect(message).not.toMatch(/undefined|NaN|null|\bmarta\b|\bloft\b|\bearly\b/);
    }
  });

  test("no rule is left out", () => {
    expect([...new Set(BOUNDS.map(({ rule }) => rule))].sort()).toEqual(MONTH_RULES.map(({ id }) => id));
  });
});

describe("the list of rules", () => {
  test("names every file once, in order", () => {
    const files = readdirSync("lib/month/rules").map((file) => file.replace(/\.ts$/, ""));
    expect(MONTH_RULES.map(({ id }) => id)).toEqual(files.sort());
  });

  test.each(MONTH_RULES.map((rule) => [rule.id, rule] as const))("%s has what its page shows", (_, rule) => {
    for (const words of [rule.title, rule.why, rule.fix, rule.source]) expect(words.length).toBeGreaterThan(10);
    for (const limit of limitsOf(rule)) expect(limit.label).toMatch(/^[A-Z].{20,}[^.]$/);
  });

  test("where work on muscles is named, the page says that it is no advice to a person", () => {
    const about = ["short-recovery", "heavy-twice-a-day", "week-rises-much"];
    for (const rule of MONTH_RULES.filter(({ id }) => about.includes(id)))
      expect(rule.why).toMatch(/no advice to a person/);
  });
});

describe("what is told", () => {
  const days = ["2026-04-01", "2026-04-06", "2026-04-07"].map((date, i) => slot(`s${i}`, { date, coach: null }));

  test("from the later of `from` and `asOf`", () => {
    expect(ids("no-coach", month(days))).toHaveLength(3);
    expect(ids("no-coach", month(days, { asOf: "2026-04-06" }))).toEqual(["no-coach:s1", "no-coach:s2"]);
    expect(ids("no-coach", month(days, { asOf: "2026-05-06" }))).toEqual([]);
  });

  test("earlier slots only together with one of the month", () => {
    const dates = { from: "2026-04-07", to: "2026-04-30", known: "2026-04-01" };
    const two = [slot("a", { date: "2026-04-06", start: "22:00" }), slot("b", { date: "2026-04-07", start: "06:00" })];
    expect(monthFindings(month(two, { dates })).map(({ id }) => id)).toEqual(["coach-rest-short:marta:a+b"]);
    expect(ids("no-coach", month(days, { dates }))).toEqual(["no-coach:s2"]);
  });

  test("a promise without any class, also when the month is over", () => {
    const over = month([], { themes: { pull: { name: "Pull", promised: 1 } }, asOf: "2026-06-01" });
    expect(monthFindings(over).map(({ id }) => id)).toEqual(["theme-promise-missed:pull"]);
  });

  test("by level, then start, then id; at the studio's level or not at all", () => {
    const bare = (id: string, date: string) => slot(id, { date, coach: null, plan: null, room: null });
    const more = {
      themes: { pull: { name: "Pull", promised: 1 } },
      standards: { "no-room": { level: "must" }, "no-plan": { level: "off" } },
    } as const;
    const all = monthFindings(
      month([bare("b", "2026-04-06"), bare("a", "2026-04-07")], { ...more, holidays: { "2026-04-06": "E" } }),
    );
    expect(all.map(({ level, id }) => `${level} ${id}`)).toEqual([
      "must no-room:b",
      "must no-room:a",
      "look no-coach:b",
      "look no-coach:a",
      "look theme-promise-missed:pull",
      "info on-a-holiday:b",
    ]);
  });
});
