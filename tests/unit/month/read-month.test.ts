/** What is no month file is refused with one line that begins with the place (a JSON Pointer, RFC 6901). */
import { describe, expect, test } from "vitest";
import { readMonthFile, readMonthValue } from "#lib/month/file/read-month.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { busyMonth } from "#tests/support/busy-month.ts";
import { smallMonth, smallPlan, smallSlot } from "#tests/support/small-month.ts";

/** Everything that a file may have. */
const FULL: MonthFile = smallMonth({
  dates: { from: "2026-04-01", to: "2026-04-30", known: "2026-03-04" },
  asOf: "2026-04-05",
  holidays: { "2026-04-03": "Good Friday" },
  coaches: {
    marta: {
      name: "Marta",
      roles: ["coach", "lead"],
      free: [{ days: [1, 2], from: "06:00", to: "24:00" }],
      away: [{ from: "2026-04-20", to: "2026-04-20", why: "Course" }],
    },
  },
  regulars: { early: { name: "Early birds", people: 6 } },
  themes: { pull: { name: "Pull", promised: 4, shares: { "upper-back": 0.2 } } },
  plans: {
    a: smallPlan({ known: true, edition: 2, sha256: "0".repeat(64), groups: { chest: 1.5 } }),
    b: { title: "", known: false },
  },
  pattern: [
    {
      ...{ id: "line", days: [2], every: 2, weekStart: 7, from: "2025-01-01", to: "2026-12-31", count: 400 },
      ...{ except: ["2026-04-07"], start: "07:00", minutes: 45, room: null, coach: null, theme: null, plan: null },
    },
    {
      id: "first",
      days: [7],
      nth: [1, -1],
      start: "09:00",
      minutes: 45,
      regulars: ["early"],
      people: 0,
      locked: true,
      note: "",
    },
  ],
  slots: [
    smallSlot("one", {
      ...{ regulars: ["early"], theme: "pull", people: 500, locked: false, out: true, note: "x", sequence: 3 },
      ...{ changedAt: "2026-03-20T09:30:00Z", formerCoaches: ["marta"], formerRooms: ["loft"] },
    }),
    { id: "two", date: "2026-03-04", start: "00:00", minutes: 5 },
  ],
  limits: { heavySeconds: 240, heavyBy: { calves: 100 }, recoveryBy: { calves: 24 }, likeMost: 0.5 },
  standards: { "too-alike": { level: "off" }, "no-room": { level: "must" } },
  weights: { must: 0, look: 10_000, wish: 1 },
  fill: {
    slots: ["one", "first-20260405"],
    plans: ["a"],
    wishes: [{ slot: "one", plan: "a", weight: 3 }],
    mostUses: 2,
  },
});

type Json = Record<string | number, unknown>;

/** The full month as text with another value at a place; undefined takes it away. */
function changed(place: string, value: unknown): string {
  const root = structuredClone(FULL) as unknown as Json;
  const path = place.split("/").slice(1);
  const last = path.pop() as string;
  let at = root;
  for (const step of path) at = at[step] as Json;
  if (value === undefined) delete at[last];
  else at[last] = value;
  return JSON.stringify(root);
}

const say = (text: string): string => {
  const read = readMonthFile(text);
  return read.ok ? "" : read.say;
};

test("what a month file may have is read as it is", () => {
  expect(readMonthFile(JSON.stringify(FULL))).toEqual({ ok: true, month: FULL });
  const busy = busyMonth({ coaches: 12, slots: 400, plans: 60 });
  expect(readMonthFile(JSON.stringify(busy))).toEqual({ ok: true, month: busy });
});

const SLOT = { id: "three", date: "2026-04-07", start: "07:00", minutes: 45 };
const lines = (n: number) =>
  Array.from({ length: n }, (_, i) => ({ id: `l${i}`, days: [1, 2, 3, 4, 5, 6, 7], start: "07:00", minutes: 45 }));

/** The place that is changed, its value, and the place that is named where that is another one. */
const REFUSED: readonly (readonly [string, unknown, string?])[] = [
  ["/format", "springline.month/2"],
  ["/format", undefined],
  ["/title", 4],
  ["/extra", 1],
  ["/studio/uid", "6f1d3c52"],
  ["/studio/uid", undefined],
  ["/studio/name", null],
  ["/studio/place", "Lisbon"],
  ["/zone", "Europe/Atlantis"],
  ["/zone", "+01:00"],
  ["/zone", ""],
  ["/changedAt", "2026-03-20"],
  ["/changedAt", "2026-02-30T09:30:00Z"],
  ["/changedAt", "2026-03-20T24:00:00Z"],
  ["/changedAt", "2026-03-20T09:30:00+01:00"],
  ["/dates/from", "2026-4-01"],
  ["/dates/from", "1999-12-31"],
  ["/dates/to", "2100-01-01"],
  ["/dates/to", "2026-04-31"],
  ["/dates/to", "2026-03-31"],
  ["/dates/to", "2026-06-02"],
  ["/dates/known", "2026-03-03"],
  ["/dates/known", "2026-04-02"],
  ["/asOf", "tomorrow"],
  ["/holidays", { "2026-02-29": "Leap" }, "/holidays/2026-02-29"],
  ["/holidays/2026-04-03", 1],
  ["/rooms/Loft", { name: "x", machines: 1, equipment: "e" }],
  ["/rooms/loft/machines", 0],
  ["/rooms/loft/machines", 201],
  ["/rooms/loft/machines", 8.5],
  ["/rooms/loft/equipment", "Long Rail"],
  ["/rooms/loft/equipment", undefined],
  ["/rooms", undefined],
  ["/coaches/marta/roles", ["boss"], "/coaches/marta/roles/0"],
  ["/coaches/marta/roles", ["coach", "coach"]],
  ["/coaches/marta/free/0/days/0", 0],
  ["/coaches/marta/free/0/days", [2, 2]],
  ["/coaches/marta/free/0/from", "24:00"],
  ["/coaches/marta/free/0/to", "24:01"],
  ["/coaches/marta/free/0", { days: [1], from: "08:00", to: "07:00" }, "/coaches/marta/free/0/to"],
  ["/coaches/marta/away/0/to", "2026-04-19"],
  ["/coaches/marta/away/0/note", "x"],
  ["/regulars/early/people", 0],
  ["/regulars/early/people", 501],
  ["/themes/pull/promised", -1],
  ["/themes/pull/promised", 1.5],
  ["/themes/pull/shares/neck", 0.1],
  ["/themes/pull/shares/upper-back", 1.01],
  ["/plans/a/known", "yes"],
  ["/plans/a/seconds", "2400"],
  ["/plans/a/seconds", -1],
  ["/plans/a/signed", 1],
  ["/plans/a/edition", 0],
  ["/plans/a/equipment", undefined],
  ["/plans/a/groups/chest", -0.5],
  ["/plans/a/groups/belly", 1],
  ["/plans/a/moves", { "Push Up": 1 }, "/plans/a/moves/Push Up"],
  ["/plans/a/moves", { row: null }, "/plans/a/moves/row"],
  ["/plans/a/talkSeconds", undefined],
  ["/plans/b/seconds", 1],
  ["/pattern/0/id", `${"l".repeat(56)}`],
  ["/pattern/1/id", "line"],
  ["/pattern/0/days", []],
  ["/pattern/0/days", [8], "/pattern/0/days/0"],
  ["/pattern/0/days", [1, 1]],
  ["/pattern/0/every", 0],
  ["/pattern/0/every", 9],
  ["/pattern/0/nth", [1], "/pattern/0/every"],
  ["/pattern/0/weekStart", 2],
  ["/pattern/1/nth", [0], "/pattern/1/nth/0"],
  ["/pattern/1/nth", [6], "/pattern/1/nth/0"],
  ["/pattern/1/nth", [1, 1]],
  ["/pattern/0/to", "2024-12-31"],
  ["/pattern/0/count", 401],
  ["/pattern/0/count", 0],
  ["/pattern/0/except", ["2026-04-07", "2026-04-07"]],
  ["/pattern/0/except/0", "2026-04-32"],
  ["/pattern/0/date", "2026-04-07"],
  ["/pattern/0/out", true],
  ["/pattern/0/room", "cellar"],
  ["/pattern/0/coach", "nobody"],
  ["/pattern/0/theme", "push"],
  ["/pattern/0/plan", "z"],
  ["/pattern/1/regulars/0", "late"],
  ["/slots/1/id", "one"],
  ["/slots/0/id", "One"],
  ["/slots/0/date", "2026-03-03"],
  ["/slots/0/date", "2026-05-01"],
  ["/slots/0/start", "7:00"],
  ["/slots/0/start", "24:00"],
  ["/slots/0/minutes", 4],
  ["/slots/0/minutes", 481],
  ["/slots/0/minutes", 45.5],
  ["/slots/0/room", "cellar"],
  ["/slots/0/room", "constructor"],
  ["/slots/0/coach", "nobody"],
  ["/slots/0/theme", "push"],
  ["/slots/0/plan", "z"],
  ["/slots/0/regulars", ["early", "early"]],
  ["/slots/0/regulars", ["late"], "/slots/0/regulars/0"],
  ["/slots/0/regulars", null],
  ["/slots/0/people", 501],
  ["/slots/0/people", null],
  ["/slots/0/locked", "no"],
  ["/slots/0/sequence", -1],
  ["/slots/0/changedAt", 1],
  ["/slots/0/formerCoaches", ["nobody"], "/slots/0/formerCoaches/0"],
  ["/slots/0/formerRooms", ["cellar"], "/slots/0/formerRooms/0"],
  ["/slots/0/formerRooms", ["loft", "loft"]],
  ["/slots/0/colour", "grey"],
  ["/slots", Array.from({ length: 1001 }, (_, i) => ({ ...SLOT, id: `s${i}` }))],
  ["/slots", {}],
  ["/pattern", lines(35), "/pattern/34"],
  ["/limits/heavy", 1],
  ["/limits/heavySeconds", -1],
  ["/limits/heavySeconds", null],
  ["/limits/heavyBy/neck", 100],
  ["/limits/heavyBy/calves", "100"],
  ["/limits/likeMost", "0.8"],
  ["/limits/restHours", -0.5],
  ["/standards/too-alik", { level: "off" }],
  ["/standards/too-alike/level", "never"],
  ["/standards/too-alike", {}, "/standards/too-alike/level"],
  ["/weights/must", 10_001],
  ["/weights/look", 0.5],
  ["/weights/should", 1],
  ["/fill/slots", ["none"], "/fill/slots/0"],
  ["/fill/slots", ["one", "one"]],
  ["/fill/plans", ["z"], "/fill/plans/0"],
  ["/fill/wishes/0/slot", "none"],
  ["/fill/wishes/0/plan", "z"],
  ["/fill/wishes/0/weight", 10_001],
  ["/fill/mostUses", 0],
  ["/fill/most", 1],
];

describe("refused with its place", () => {
  test.each(REFUSED.map((one) => ({ place: one[0], value: one[1], named: one[2] ?? one[0] })))(
    "$place: $value",
    ({ place, value, named }) => {
      const line = say(changed(place, value));
      expect(line.slice(0, named.length + 1)).toBe(`${named} `);
      expect(line.split("\n")).toHaveLength(1);
    },
  );

  test("there are many", () => {
    expect(REFUSED.length).toBeGreaterThan(120);
  });
});

describe("refused as a whole", () => {
  test.each([
    ["", /is empty/],
    ["{", /should be JSON/],
    ["[]", /should be an object/],
    ["null", /should be an object/],
    ['"x"', /should be an object/],
    [changed("/title", "T").replace('"T"', "NaN"), /should be JSON/],
    [changed("/title", "T").replace('"T"', '"T", "__proto__": {}'), /^\/__proto__ is not a key/],
    [changed("/rooms/loft/machines", 7).replace('"machines":7', '"machines":1e999'), /^\/rooms\/loft\/machines /],
    [changed("/title", "T").replace('"T"', '"T", "title": "U"'), /^\/title is a repeated key/],
    ["[".repeat(60_000), /nested too deeply/],
  ])("%.40s", (text, expected) => {
    expect(say(text)).toMatch(expected);
  });
});

test("a thousand slots pass, with those of the pattern", () => {
  const slots = Array.from({ length: 970 }, (_, i) => smallSlot(`s${i}`));
  expect(readMonthValue(smallMonth({ slots, pattern: lines(1) })).ok).toBe(true);
  expect(readMonthValue(smallMonth({ slots: [...slots, smallSlot("more")], pattern: lines(1) })).ok).toBe(false);
  // A slot that stands in the place of an occurrence counts once.
  const moved = [...slots.slice(1), smallSlot("l0-20260406"), smallSlot("l0-20260407")];
  expect(readMonthValue(smallMonth({ slots: moved, pattern: lines(1) })).ok).toBe(true);
});
