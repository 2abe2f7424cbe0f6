/** Somebody's coming classes that are no longer as the month was signed, each in words. */
import { newestMonthEdition } from "#db/repos/month-edition-repo.ts";
import { changeSince } from "#lib/month/changes/change-words.ts";
import { type ChangedSlot, slotChanges } from "#lib/month/changes/slot-changes.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import type { Person } from "#lib/policy/can.ts";
import { classTitle } from "#lib/tide/day-marks.ts";
import type { Springline } from "#server/context/springline.ts";
import { signedMonthAs } from "#server/month-sign/month-editions.ts";
import { readMonthFileOf } from "#server/programme/read-month-file.ts";

export interface ChangedClassAtDesk {
  readonly month: string;
  /** The class's id. */
  readonly slot: string;
  /** Its theme, its plan's title, or "Class". */
  readonly title: string;
  /** "2026-12-01 07:00", the studio's own time: when it is; when it was, if it is called off. */
  readonly at: string;
  /** ms since the epoch, when it was changed last; 0 when nobody knows. */
  readonly changedAt: number;
  /** "Since edition 1 was signed: moved from Mon 2 Mar 18:00." */
  readonly words: string;
}

/** Of one month, those on `from` or later and at most on `to`, led by this person now or when it was signed. */
export function changedClassesOf(
  app: Springline,
  person: Person,
  month: string,
  { from, to }: { readonly from: string; readonly to: string },
): ChangedClassAtDesk[] {
  const edition = newestMonthEdition(app.db, month);
  const was = signedMonthAs(app, person, edition);
  if (!edition || !was) return [];
  const now = readMonthFileOf(app, person, month);
  if (!now.ok) return [];
  const since = `edition ${edition.number} was signed`;
  return slotChanges(was, now.value)
    .filter((change) => isOf(change, person.id))
    .flatMap((change): ChangedClassAtDesk[] => {
      const slot = standing(change);
      const words = changeSince(change, { was, now: now.value }, since);
      if (!slot || words === null || !slot.date.startsWith(month) || slot.date < from || slot.date > to) return [];
      return [{ month, slot: change.id, ...shownAs(slot, now.value), words }];
    });
}

const isOf = ({ was, now }: ChangedSlot, id: string): boolean => [was, now].some((slot) => slot?.coach === id);

/** As it is; of one that is called off, as it was. */
const standing = ({ kind, was, now }: ChangedSlot): MonthSlot | null => (kind === "called-off" ? was : now) ?? now;

const shownAs = (slot: MonthSlot, file: MonthFile) => ({
  title: classTitle(file, slot),
  at: `${slot.date} ${slot.start}`,
  changedAt: slot.changedAt === undefined ? 0 : Date.parse(slot.changedAt),
});
