/** A month of a large studio, the same for the same sizes. Its names are invented; its numbers are made for a test. */
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { MONTH_FORMAT, type MonthFile, type MonthSlot, type PlanFacts } from "#lib/month/types.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { Dice } from "./dice.ts";

export interface MonthSizes {
  readonly coaches: number;
  readonly slots: number;
  readonly plans: number;
}

const FROM = "2026-03-01";
const TO = "2026-03-31";
const KNOWN = "2026-02-02";

const named = <T>(what: string, n: number, make: (i: number) => T): Record<string, T> =>
  Object.fromEntries(Array.from({ length: n }, (_, i) => [`${what}-${i}`, make(i)]));

export function busyMonth({ coaches, slots, plans }: MonthSizes, seed = 1): MonthFile {
  const dice = new Dice(seed);
  return {
    format: MONTH_FORMAT,
    title: "March",
    studio: { uid: "6f1d3c52-8f0a-4d8b-9a57-2b1f5f0f7a11", name: "Tidewater Strength" },
    zone: "Europe/Lisbon",
    changedAt: "2026-02-20T09:30:00Z",
    dates: { from: FROM, to: TO, known: KNOWN },
    holidays: { "2026-03-19": "Harbour day" },
    rooms: named("room", 4, (i) => ({ name: `Room ${i}`, machines: 8 + i, equipment: "long-rail" })),
    coaches: named("coach", coaches, (i) => ({
      name: `Coach ${i}`,
      roles: [dice.one(["coach", "lead", "trainee"] as const)],
      ...(i % 3 === 0 ? { free: [{ days: [1, 2, 3, 4, 5], from: "07:00", to: "20:00" }] } : {}),
      ...(i % 4 === 0 ? { away: [{ from: "2026-03-09", to: "2026-03-12" }] } : {}),
    })),
    regulars: named("group", 8, (i) => ({ name: `Group ${i}`, people: 4 + i })),
    themes: named("theme", 4, (i) => ({
      name: `Theme ${i}`,
      promised: 20 * i,
      shares: { [GROUPS[i * 3] as string]: 0.15 },
    })),
    plans: named("plan", plans, () => somePlan(dice)),
    pattern: [
      {
        id: "early",
        days: [1, 3, 5],
        start: "07:00",
        minutes: 45,
        room: "room-0",
        coach: "coach-1",
        regulars: ["group-0"],
      },
      { id: "first", days: [6], nth: [1, -1], start: "10:00", minutes: 60, room: "room-1", regulars: ["group-1"] },
    ],
    slots: Array.from({ length: slots - 15 }, (_, i) => someSlot(dice, i, { coaches, plans })),
  };
}

export function somePlan(dice: Dice): PlanFacts {
  const some = <T extends string>(of: readonly T[], n: number) =>
    Object.fromEntries(Array.from({ length: n }, () => [dice.one(of), 15 * (1 + dice.upTo(12))]));
  const moves = Array.from({ length: 60 }, (_, i) => `move-${i}`);
  return {
    title: `Class ${dice.upTo(1000)}`,
    seconds: 2400 + dice.upTo(600),
    signed: dice.upTo(4) > 0,
    equipment: dice.upTo(10) > 0 ? "long-rail" : "short-rail",
    groups: { ...some(GROUPS, 9), [dice.one(GROUPS)]: 420 },
    moves: some(moves, 24),
    push: dice.upTo(900),
    pull: dice.upTo(900),
    metMinutes: 120 + dice.upTo(80),
    talkSeconds: 900 + dice.upTo(900),
  };
}

const STARTS = ["06:30", "07:00", "09:15", "12:00", "17:30", "18:30", "19:15", "20:15"];

export function someSlot(dice: Dice, i: number, { coaches, plans }: Omit<MonthSizes, "slots">): MonthSlot {
  const maybe = <T>(value: T, one = 8): T | null => (dice.upTo(one) === 0 ? null : value);
  return {
    id: `slot-${i}`,
    date: dateOfDay(dayNumber(KNOWN) + dice.upTo(58)),
    start: dice.one(STARTS),
    minutes: 45,
    room: maybe(`room-${dice.upTo(4)}`),
    coach: maybe(`coach-${dice.upTo(coaches)}`),
    regulars: [`group-${dice.upTo(8)}`],
    theme: maybe(`theme-${dice.upTo(4)}`, 2),
    plan: maybe(`plan-${dice.upTo(plans)}`),
    out: dice.upTo(30) === 0,
  };
}
