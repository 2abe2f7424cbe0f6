/** A studio's week with slots to fill, of any size, made by a fixed rule: for timing, and as a hard but ordinary case. */
import type { KnownPlan, MonthFile, MonthSlot } from "#lib/month/types.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { Dice } from "./dice.ts";

export interface WeekSize {
  readonly slots: number;
  readonly plans: number;
  /** Groups of regulars; each comes to every n-th class. */
  readonly regulars: number;
  readonly mostUses?: number;
  readonly seed?: number;
}

const STARTS = ["07:00", "12:15", "17:30", "18:45", "20:00", "09:30"];
const DAYS = ["02", "03", "04", "05", "06", "07", "08"].map((day) => `2026-03-${day}`);

export function studioWeek(size: WeekSize): MonthFile {
  const random = new Dice(size.seed ?? 1);
  const plans = Object.fromEntries(Array.from({ length: size.plans }, (_, i) => [`plan-${i + 10}`, planOf(i, random)]));
  const ids = (name: string, n: number): string[] => Array.from({ length: n }, (_, i) => `${name}-${i + 10}`);
  const regulars = ids("regulars", size.regulars);
  const slots = Array.from({ length: size.slots }, (_, i): MonthSlot => {
    // The classes of one group of regulars lie two days or so apart; one class in five has another group too.
    const own = regulars[i % size.regulars] ?? "";
    const also = random.upTo(5) === 0 ? [random.one(regulars)] : [];
    const perDay = Math.ceil(size.slots / 6);
    return {
      id: `slot-${i + 10}`,
      date: DAYS[Math.floor(i / perDay)] ?? "2026-03-08",
      start: STARTS[(i % perDay) % STARTS.length] ?? "21:00",
      minutes: 55,
      room: "hall",
      coach: `coach-${(i % 4) + 10}`,
      regulars: [...new Set([own, ...also])],
      theme: random.upTo(3) === 0 ? random.one(["arms", "legs"]) : null,
    };
  });
  const named = (list: readonly string[]) => Object.fromEntries(list.map((id) => [id, { name: id }]));
  return {
    format: "springline.month/1",
    title: "A week",
    studio: { uid: "5f0c2f3e-8d0b-4a4e-9b1a-3c8f1f2d7a10", name: "Tidewater" },
    zone: "Europe/Lisbon",
    changedAt: "2026-02-20T10:00:00Z",
    dates: { from: "2026-03-02", to: "2026-03-08" },
    rooms: { hall: { name: "Hall", machines: 10, equipment: "twin-rail" } },
    coaches: Object.fromEntries(ids("coach", 4).map((id) => [id, { name: id, roles: ["coach"] as const }])),
    regulars: named(regulars),
    themes: { arms: { name: "Arms", shares: { biceps: 0.2 } }, legs: { name: "Legs", shares: { glutes: 0.25 } } },
    plans,
    slots,
    fill: {
      ...(size.mostUses === undefined ? {} : { mostUses: size.mostUses }),
      wishes: slots.filter((_, i) => i % 7 === 0).map(({ id }) => ({ slot: id, plan: random.one(Object.keys(plans)) })),
    },
  };
}

/** Ten moves of forty, each for one group and a little for another; some ten minutes of a group are common. */
function planOf(i: number, random: Dice): KnownPlan {
  const moves: Record<string, number> = {};
  const groups: Partial<Record<(typeof GROUPS)[number], number>> = {};
  const focus = random.upTo(GROUPS.length);
  while (Object.keys(moves).length < 10) {
    const move = random.upTo(40);
    if (moves[`move-${move}`] !== undefined) continue;
    const seconds = 60 + 30 * random.upTo(6);
    moves[`move-${move}`] = seconds;
    const main = GROUPS[random.upTo(2) === 0 ? focus : move % GROUPS.length] ?? "chest";
    const helper = GROUPS[(move * 7) % GROUPS.length] ?? "chest";
    groups[main] = (groups[main] ?? 0) + seconds;
    groups[helper] = (groups[helper] ?? 0) + seconds / 2;
  }
  const title = `Plan ${i + 10}`;
  return {
    ...{ title, seconds: 3000, signed: true, equipment: "twin-rail", groups, moves },
    ...{ push: 400, pull: 300, metMinutes: 180, talkSeconds: 1500 + 60 * random.upTo(10) },
  };
}
