/** What a person can do to many classes at once, each act one step of undo: a copied week, last month's classes, a filling. */
import { dateOfDay, dayNumber, daysOfMonth, isoWeekday } from "#lib/calendar/days.ts";
import { act, type Writer } from "#lib/doc/write.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { occurrenceId, occurrenceOf } from "./layout.ts";
import type { MonthState } from "./month-reader.ts";
import { monthClasses, readMonthState } from "./read.ts";
import { addSlot, changeSlot } from "./write.ts";

/** What a copying did. */
export interface Copied {
  /** Ids of the classes that were added or changed. */
  readonly slots: readonly string[];
  /** Classes that have no day in this month, or stand there already. */
  readonly left: number;
  /** Classes that would have been more than there is room for: nothing was written. */
  readonly over?: number;
}

export interface CopyOptions {
  /** How many classes may be added. */
  readonly room: number;
  /** A new id each time. */
  readonly newId: () => string;
  /** ms since the epoch. */
  readonly now: number;
}

/**
 * Copies the classes of the week of one date to the week of another. Where the pattern gives the same class there, that one gets
 * what was changed in this one; others are added, unless one stands there at that time in that room. Plans come along, notes do not.
 */
export function copyWeek(w: Writer, from: string, to: string, options: CopyOptions): Copied {
  const state = readMonthState(w.doc);
  const monday = (date: string) => dayNumber(date) - isoWeekday(date) + 1;
  const by = monday(to) - monday(from);
  const week = monthClasses(state).filter((slot) => slot.out !== true && monday(slot.date) === monday(from));
  return copyEach(w, state, week, options, (slot) => dateOfDay(dayNumber(slot.date) + by));
}

/**
 * Brings last month's classes here: each to the same day of the same week of the month (the first Monday to the first Monday),
 * with the theme that comes `shiftThemes` places later in the list of themes, so that a group of regulars goes on to the next one.
 * Plans and notes do not come along. Where the pattern gives the class already, it only gets its theme.
 */
export function takeLastMonth(
  w: Writer,
  last: MonthState,
  options: CopyOptions & { readonly shiftThemes: number },
): Copied {
  const state = readMonthState(w.doc);
  const days = daysOfMonth(state.month);
  const classes = monthClasses(last)
    .filter((slot) => slot.out !== true)
    .map(({ plan: _, note: _n, locked: _l, ...slot }) => ({
      ...slot,
      theme: shiftedTheme(slot.theme, state, options.shiftThemes),
    }));
  return copyEach(w, state, classes, options, (slot) => days.find((day) => sameDayOfMonth(day, slot.date)));
}

const nthOf = (date: string): number => Math.ceil(Number(date.slice(8)) / 7);
const sameDayOfMonth = (a: string, b: string): boolean => isoWeekday(a) === isoWeekday(b) && nthOf(a) === nthOf(b);

function shiftedTheme(theme: string | null | undefined, { themes }: MonthState, by: number): string | null {
  const ids = Object.keys(themes).sort((a, b) => ((themes[a]?.name ?? "") < (themes[b]?.name ?? "") ? -1 : 1));
  const at = typeof theme === "string" ? ids.indexOf(theme) : -1;
  return at < 0 ? null : (ids[(((at + by) % ids.length) + ids.length) % ids.length] ?? null);
}

function copyEach(
  w: Writer,
  state: MonthState,
  classes: readonly MonthSlot[],
  options: CopyOptions,
  dateOf: (slot: MonthSlot) => string | undefined,
): Copied {
  const there = new Map(monthClasses(state).map((slot) => [slot.id, slot]));
  const copies = classes.flatMap((slot) => copyOf(slot, dateOf(slot), state, there) ?? []);
  const added = copies.filter(({ given }) => !given).length;
  if (added > options.room) return { slots: [], left: classes.length, over: added - options.room };
  const done: string[] = [];
  act(w, () => {
    for (const copy of copies) {
      const id = copyOne(w, copy, options);
      if (id !== undefined) done.push(id);
    }
  });
  return { slots: done, left: classes.length - done.length };
}

interface Copy {
  readonly slot: MonthSlot;
  readonly date: string;
  /** The class that the pattern gives there. */
  readonly given: MonthSlot | undefined;
}

/** Undefined where it has no day in this month, or another stands there. */
function copyOf(
  slot: MonthSlot,
  date: string | undefined,
  { dates }: MonthState,
  there: ReadonlyMap<string, MonthSlot>,
): Copy | undefined {
  if (date === undefined || date < dates.from || date > dates.to) return undefined;
  const line = occurrenceOf(slot.id)?.line;
  const given = line === undefined ? undefined : there.get(occurrenceId(line, date));
  if (given) return { slot, date, given };
  const stands = [...there.values()].some(
    (other) =>
      other.out !== true &&
      other.date === date &&
      other.start === slot.start &&
      (other.room ?? null) === (slot.room ?? null),
  );
  return stands ? undefined : { slot, date, given };
}

function copyOne(w: Writer, { slot, date, given }: Copy, { newId, now }: CopyOptions): string | undefined {
  if (given) {
    const { id: _, note: _n, date: _d, out: _o, changedAt: _c, sequence: _s, ...values } = slot;
    return changeSlot(w, given.id, values) ? given.id : undefined;
  }
  const {
    note: _,
    out: _o,
    locked: _l,
    changedAt: _c,
    sequence: _s,
    formerCoaches: _f,
    formerRooms: _r,
    ...values
  } = slot;
  const id = newId();
  return addSlot(w, { ...values, id, date }, now) ? id : undefined;
}

/** Puts plans in, as a fill or a person chose them; null empties a class. Locked classes and such that are gone are left as they are. */
export function applyFill(w: Writer, plans: Readonly<Record<string, string | null>>): string[] {
  const locked = new Set(monthClasses(readMonthState(w.doc)).flatMap((slot) => (slot.locked ? [slot.id] : [])));
  const done: string[] = [];
  act(w, () => {
    for (const [slot, plan] of Object.entries(plans))
      if (!locked.has(slot) && changeSlot(w, slot, { plan })) done.push(slot);
  });
  return done;
}
