/** What a person can do to many classes at once, each act one step of undo: a copied week, last month's classes, a filling. */

import { act, type Writer } from "#lib/doc/write.ts";
import type { WeekStart } from "#lib/formats/formats.ts";
import { type ClassCopies, copiesOfLastMonth, copiesOfWeek } from "./copies.ts";
import type { MonthState } from "./month-reader.ts";
import { monthClasses, readMonthState } from "./read.ts";
import { addSlot, changeSlot } from "./write.ts";

/** What a copying did. */
export interface Copied extends Pick<ClassCopies, "there" | "noDay"> {
  /** Ids of the classes that are new. */
  readonly added: readonly string[];
  /** Ids of the pattern's classes that got something. */
  readonly changed: readonly string[];
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

/** See `copiesOfWeek`. Weeks begin on Monday unless said otherwise. */
export const copyWeek = (
  w: Writer,
  from: string,
  to: string,
  options: CopyOptions & { readonly weekStart?: WeekStart },
): Copied => writeCopies(w, copiesOfWeek(readMonthState(w.doc), from, to, options.weekStart ?? 1), options);

/** See `copiesOfLastMonth`. */
export const takeLastMonth = (
  w: Writer,
  last: MonthState,
  { shiftThemes, ...options }: CopyOptions & { readonly shiftThemes: number },
): Copied => writeCopies(w, copiesOfLastMonth(readMonthState(w.doc), last, shiftThemes), options);

function writeCopies(w: Writer, { add, change, there, noDay }: ClassCopies, { room, newId, now }: CopyOptions): Copied {
  if (add.length > room) return { added: [], changed: [], there, noDay, over: add.length - room };
  const [added, changed]: [string[], string[]] = [[], []];
  act(w, () => {
    for (const slot of add) {
      const id = newId();
      if (addSlot(w, { ...slot, id }, now)) added.push(id);
    }
    for (const { id, values } of change) if (changeSlot(w, id, values)) changed.push(id);
  });
  return { added, changed, there, noDay };
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
