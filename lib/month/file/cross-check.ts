/** Checks what the schema of a month cannot: that ids exist and are not repeated, dates and the number of slots. */
import { own } from "#lib/plan/lookup.ts";
import type { Path, PlanProblem } from "#lib/plan/pointer.ts";
import { monthRuleById } from "../check/registry.ts";
import { joinSlots, occurrencesOf } from "../expand.ts";
import type { MonthFile, MonthSlot, SlotValues } from "../types.ts";

/** Of a file, with those that its pattern gives. */
export const MOST_SLOTS = 1000;

type Problems = Iterable<PlanProblem>;

/** The first problem of a month whose shape is right, or undefined. */
export function crossCheckMonth(month: MonthFile): PlanProblem | undefined {
  for (const check of [repeated, inLines, inSlots, standards, tooMany, inFill])
    for (const problem of check(month)) return problem;
  return undefined;
}

function* repeated({ pattern = [], slots }: MonthFile): Problems {
  yield* repeatedIn(pattern, "pattern");
  yield* repeatedIn(slots, "slots");
}

function* repeatedIn(list: readonly { readonly id: string }[], at: string): Problems {
  const seen = new Set<string>();
  for (const [i, { id }] of list.entries()) {
    if (seen.has(id)) yield { path: [at, i, "id"], problem: `should be an id of its own; "${id}" stands there twice` };
    seen.add(id);
  }
}

function* inLines(month: MonthFile): Problems {
  for (const [i, line] of (month.pattern ?? []).entries()) yield* inValues(month, line, ["pattern", i]);
}

function* inSlots(month: MonthFile): Problems {
  const { known = month.dates.from, to } = month.dates;
  for (const [i, slot] of month.slots.entries()) {
    const at: Path = ["slots", i];
    if (slot.date < known || slot.date > to)
      yield { path: [...at, "date"], problem: `should be a day of this file, from ${known} to ${to}` };
    yield* inValues(month, slot, at);
    yield* unknownIn(month.coaches, slot.formerCoaches, { at: [...at, "formerCoaches"], what: "a coach" });
    yield* unknownIn(month.rooms, slot.formerRooms, { at: [...at, "formerRooms"], what: "a room" });
  }
}

function* inValues(month: MonthFile, values: SlotValues, at: Path): Problems {
  const { room, coach, theme, plan, regulars } = values;
  yield* unknown(month.rooms, room, { at: [...at, "room"], what: "a room" });
  yield* unknown(month.coaches, coach, { at: [...at, "coach"], what: "a coach" });
  yield* unknown(month.themes ?? {}, theme, { at: [...at, "theme"], what: "a theme" });
  yield* unknown(month.plans, plan, { at: [...at, "plan"], what: "a plan" });
  yield* unknownIn(month.regulars, regulars, { at: [...at, "regulars"], what: "a group of regulars" });
}

interface Place {
  readonly at: Path;
  readonly what: string;
}
type Entries = Readonly<Record<string, unknown>>;

function* unknown(entries: Entries, id: string | null | undefined, { at, what }: Place): Problems {
  if (id === null || id === undefined || own(entries, id) !== undefined) return;
  yield { path: at, problem: `should be the id of ${what} of this month; there is no "${id}"` };
}

function* unknownIn(entries: Entries, ids: readonly string[] | undefined, { at, what }: Place): Problems {
  for (const [i, id] of (ids ?? []).entries()) yield* unknown(entries, id, { at: [...at, i], what });
}

function* standards(month: MonthFile): Problems {
  for (const id of Object.keys(month.standards ?? {})) {
    if (!monthRuleById(id)) yield { path: ["standards", id], problem: "should be the id of a rule of the month" };
  }
}

/** Stops at the first slot too many: a long pattern would give hundreds of thousands. */
function* tooMany(month: MonthFile): Problems {
  const problem = `should give at most ${MOST_SLOTS} slots, together with the pattern`;
  if (month.slots.length > MOST_SLOTS) yield { path: ["slots"], problem };
  const single = new Set(month.slots.map(({ id }) => id));
  let count = month.slots.length;
  for (const [i, line] of (month.pattern ?? []).entries()) {
    count += occurrencesOf(line, month).filter(({ id }) => !single.has(id)).length;
    if (count > MOST_SLOTS) yield { path: ["pattern", i], problem };
  }
}

function* inFill(month: MonthFile): Problems {
  const { slots, plans, wishes = [] } = month.fill ?? {};
  if (!month.fill) return;
  const given = (month.pattern ?? []).map((line) => occurrencesOf(line, month));
  const known = Object.fromEntries(joinSlots(month.slots, given).map((slot): [string, MonthSlot] => [slot.id, slot]));
  yield* unknownIn(known, slots, { at: ["fill", "slots"], what: "a slot" });
  yield* unknownIn(month.plans, plans, { at: ["fill", "plans"], what: "a plan" });
  for (const [i, { slot, plan }] of wishes.entries()) {
    yield* unknown(known, slot, { at: ["fill", "wishes", i, "slot"], what: "a slot" });
    yield* unknown(month.plans, plan, { at: ["fill", "wishes", i, "plan"], what: "a plan" });
  }
}
