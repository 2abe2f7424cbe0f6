/** Small months for tests of the month's arithmetic: one room, one coach, one group of regulars, plans made to measure. */
import { MONTH_FORMAT, type MonthFile, type MonthSlot, type PlanFacts } from "#lib/month/types.ts";

export const smallPlan = (more: Partial<PlanFacts> = {}): PlanFacts => ({
  title: "Arms, chest",
  seconds: 2400,
  signed: true,
  equipment: "long-rail",
  groups: {},
  moves: {},
  push: 0,
  pull: 0,
  metMinutes: 100,
  talkSeconds: 900,
  ...more,
});

export const smallSlot = (id: string, more: Partial<MonthSlot> = {}): MonthSlot => ({
  id,
  date: "2026-04-06",
  start: "10:00",
  minutes: 45,
  room: "loft",
  coach: "marta",
  plan: "a",
  ...more,
});

/** April 2026 in Lisbon, of which 1 April is a Wednesday. */
export const smallMonth = (more: Partial<MonthFile> = {}): MonthFile => ({
  format: MONTH_FORMAT,
  title: "April",
  studio: { uid: "6f1d3c52-8f0a-4d8b-9a57-2b1f5f0f7a11", name: "Tidewater Strength" },
  zone: "Europe/Lisbon",
  changedAt: "2026-03-20T09:30:00Z",
  dates: { from: "2026-04-01", to: "2026-04-30" },
  rooms: { loft: { name: "Loft", machines: 8, equipment: "long-rail" } },
  coaches: { marta: { name: "Marta", roles: ["coach"] } },
  regulars: { early: { name: "Early birds" } },
  plans: { a: smallPlan() },
  slots: [],
  ...more,
});
