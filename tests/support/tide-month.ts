/** A month of an invented studio, to draw: two rooms, two groups of regulars, a clash, a holiday, an empty class, one not signed. */

import type { MonthFile, MonthSlot, PatternLine, PlanFacts } from "#lib/month/types.ts";
import type { Group } from "#lib/plan/schema.ts";

type Work = Partial<Record<Group, number>>;

const plan = (title: string, groups: Work, more: Partial<PlanFacts> = {}): PlanFacts => {
  const work = Object.values(groups).reduce((a, b) => a + b, 0);
  const moves = Object.fromEntries(
    Object.entries(groups).map(([group, seconds]) => [
      `${title.toLowerCase().replaceAll(/[^a-z]+/g, "-")}-${group}`,
      seconds,
    ]),
  );
  return {
    title,
    seconds: 1700,
    signed: true,
    edition: 1,
    equipment: "long-rail",
    groups,
    moves,
    push: work / 4,
    pull: work / 4,
    metMinutes: 90,
    talkSeconds: 700,
    ...more,
  };
};

const PLANS = {
  whole: plan("Whole body", {
    shoulders: 200,
    chest: 190,
    "upper-back": 320,
    biceps: 120,
    triceps: 140,
    abdominals: 260,
    "lower-back": 90,
    glutes: 420,
    quadriceps: 430,
    hamstrings: 180,
    calves: 60,
  }),
  arms: plan("Arms, chest", { shoulders: 540, chest: 520, triceps: 480, forearms: 110, abdominals: 140 }),
  legs: plan("Legs", {
    glutes: 560,
    quadriceps: 580,
    hamstrings: 420,
    abductors: 180,
    adductors: 170,
    calves: 150,
    obliques: 80,
    "hip-flexors": 90,
  }),
  back: plan("Back, pull", {
    "upper-back": 560,
    biceps: 480,
    forearms: 200,
    "lower-back": 160,
    shoulders: 90,
    abdominals: 120,
    hamstrings: 100,
  }),
  trunk: plan("Trunk, sides", { abdominals: 520, obliques: 460, "lower-back": 200, "hip-flexors": 160, shoulders: 90 }),
  upper: plan("Upper, trunk", {
    shoulders: 380,
    chest: 360,
    "upper-back": 380,
    triceps: 160,
    biceps: 140,
    abdominals: 420,
    obliques: 160,
  }),
  open: plan("Open house", { glutes: 200, quadriceps: 200, "upper-back": 180, chest: 150, abdominals: 180 }),
  draft: plan("Arms, second", { shoulders: 520, chest: 500, triceps: 460 }, { signed: false }),
};

const THEMES = {
  whole: "Whole body",
  arms: "Arms, chest",
  legs: "Legs",
  back: "Back, pull",
  trunk: "Trunk, sides",
  upper: "Upper, trunk",
  open: "Open house",
};

const LINES: readonly PatternLine[] = [
  {
    id: "mo-early",
    days: [1],
    start: "07:00",
    minutes: 30,
    room: "harbour",
    coach: "marta",
    regulars: ["early"],
    theme: "upper",
    plan: "upper",
  },
  {
    id: "tu-noon",
    days: [2],
    start: "12:15",
    minutes: 30,
    room: "harbour",
    coach: "petra",
    theme: "trunk",
    plan: "trunk",
  },
  {
    id: "we-early",
    days: [3],
    start: "07:00",
    minutes: 50,
    room: "loft",
    coach: "marta",
    regulars: ["early"],
    theme: "legs",
    plan: "legs",
  },
  {
    id: "fr-early",
    days: [5],
    start: "07:00",
    minutes: 30,
    room: "harbour",
    coach: "ines",
    regulars: ["early"],
    theme: "arms",
    plan: "arms",
  },
  { id: "fr-late", days: [5], start: "17:30", minutes: 45, room: "loft", coach: "ines", theme: "legs", plan: "legs" },
  { id: "sa-late", days: [6], start: "11:00", minutes: 40, room: "loft", coach: "ines", theme: "whole", plan: "whole" },
  {
    id: "su-open",
    days: [7],
    from: "2026-03-08",
    start: "10:00",
    minutes: 45,
    room: "harbour",
    coach: "petra",
    theme: "open",
    plan: "open",
  },
  {
    id: "mo-late",
    days: [1],
    start: "18:00",
    minutes: 50,
    room: "loft",
    coach: "ines",
    regulars: ["evening"],
    theme: "whole",
    plan: "whole",
  },
  {
    id: "we-late",
    days: [3],
    start: "18:30",
    minutes: 30,
    room: "harbour",
    coach: "jonas",
    regulars: ["evening"],
    theme: "arms",
    plan: "arms",
  },
  {
    id: "th-late",
    days: [4],
    start: "18:00",
    minutes: 50,
    room: "loft",
    coach: "marta",
    regulars: ["evening"],
    theme: "legs",
    plan: "legs",
  },
  {
    id: "sa-early",
    days: [6],
    start: "09:30",
    minutes: 50,
    room: "loft",
    coach: "marta",
    regulars: ["evening"],
    theme: "back",
    plan: "back",
  },
];

const changed = (id: string, more: Partial<MonthSlot>): MonthSlot => {
  const line = LINES.find((one) => id.startsWith(`${one.id}-`));
  if (!line) throw new Error(`no line of ${id}`);
  const { days: _, from: _from, ...values } = line;
  const digits = id.slice(-8);
  return { ...values, id, date: `${digits.slice(0, 4)}-${digits.slice(4, 6)}-${digits.slice(6)}`, ...more };
};

const SLOTS: readonly MonthSlot[] = [
  changed("mo-late-20260309", { theme: "legs", plan: "legs" }),
  changed("mo-late-20260323", { theme: "back", plan: "back" }),
  changed("mo-late-20260330", { theme: "legs", plan: "legs" }),
  changed("th-late-20260312", { theme: "upper", plan: "upper" }),
  changed("sa-early-20260314", { theme: "legs", plan: "legs" }),
  changed("sa-early-20260321", { theme: "upper", plan: "upper" }),
  changed("sa-early-20260328", { theme: "whole", plan: "whole", people: 13 }),
  changed("we-late-20260318", { theme: "trunk", plan: "trunk" }),
  changed("fr-early-20260320", { plan: null }),
  changed("sa-late-20260321", { plan: null, start: "10:30", coach: "marta" }),
  changed("we-late-20260325", { plan: "draft" }),
  changed("fr-early-20260327", { plan: "draft" }),
  changed("sa-late-20260328", { theme: "back", plan: null }),
  {
    id: "sa-open-14",
    date: "2026-03-14",
    start: "09:45",
    minutes: 45,
    room: "harbour",
    coach: "marta",
    theme: "open",
    plan: "open",
  },
  { id: "sa-open-28", date: "2026-03-28", start: "09:30", minutes: 40, room: "harbour", theme: "open", plan: "open" },
];

export const marchMonth = (): MonthFile => ({
  format: "springline.month/1",
  title: "March 2026",
  studio: { uid: "6f1d3c52-8f0a-4d8b-9a57-2b1f5f0f7a11", name: "Tidewater Strength" },
  zone: "Europe/Lisbon",
  changedAt: "2026-02-20T09:30:00Z",
  dates: { from: "2026-03-01", to: "2026-03-31" },
  holidays: { "2026-03-19": "Town day, closed" },
  rooms: {
    loft: { name: "Loft", machines: 12, equipment: "long-rail" },
    harbour: { name: "Harbour room", machines: 10, equipment: "long-rail" },
  },
  coaches: {
    marta: { name: "Marta Reis", roles: ["coach", "lead"] },
    ines: { name: "Ines Duarte", roles: ["lead"] },
    jonas: { name: "Jonas Okafor", roles: ["trainee"] },
    petra: { name: "Petra Holm", roles: ["coach"] },
  },
  regulars: { evening: { name: "Evening regulars", people: 10 }, early: { name: "Early risers", people: 9 } },
  themes: Object.fromEntries(
    Object.entries(THEMES).map(([id, name]) => [
      id,
      { name, ...(id === "legs" ? { promised: 8, shares: { glutes: 0.2 } } : {}) },
    ]),
  ),
  plans: PLANS,
  pattern: LINES,
  slots: SLOTS,
});

/** The same month with more rooms and more coaches: classes go round them in turn. */
export function crowdedMonth({ rooms, coaches }: { readonly rooms: number; readonly coaches: number }): MonthFile {
  const month = marchMonth();
  const ids = (kind: string, n: number) => Array.from({ length: n }, (_, i) => `${kind}-${i + 1}`);
  const [roomIds, coachIds] = [ids("room", rooms), ids("coach", coaches)];
  const lines = LINES.flatMap((line) => roomIds.map((room, i) => ({ ...line, id: `${line.id}-${i}`, room })));
  return {
    ...month,
    rooms: Object.fromEntries(
      roomIds.map((id, i) => [id, { name: `Room ${i + 1}`, machines: 12, equipment: "long-rail" }]),
    ),
    coaches: Object.fromEntries(
      coachIds.map((id, i) => [id, { name: `Coach${i + 1} Surname`, roles: ["coach" as const] }]),
    ),
    pattern: lines.map((line, i) => ({ ...line, coach: coachIds[i % coaches] ?? null })),
    slots: [],
  };
}
