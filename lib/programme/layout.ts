/**
 * Where a month's slots are in its shared document. Only `lib/programme` knows this.
 *
 *   meta   Map   version, month ('YYYY-MM')
 *   slots  Map   slot id -> Map: date, time, minutes, coachId, roomId, planId, deleted; theme, note (Text)
 *
 * Each value has its own flat key, so that two people can change different values of one slot. What people type is shared
 * text, so that two people typing in one note lose no letter. Unknown keys are left alone.
 */
import type * as Y from "yjs";

/** Raised when the meaning of a key changes; `migrate.ts` updates older documents. */
export const MONTH_DOC_VERSION = 1;

export type SlotMap = Y.Map<unknown>;

/** One class of the programme. */
export interface Slot {
  readonly id: string;
  /** 'YYYY-MM-DD', a day of the document's month. */
  readonly date: string;
  /** 'HH:MM', wall-clock time of the studio's town. */
  readonly time: string;
  /** Whole minutes for which the room is booked. */
  readonly minutes: number;
  readonly theme: string;
  readonly coachId: string | null;
  readonly roomId: string | null;
  readonly planId: string | null;
  readonly note: string;
}

export interface MonthDocParts {
  readonly meta: Y.Map<unknown>;
  readonly slots: Y.Map<SlotMap>;
}

/** The typed roots of a month document. Reading a root sends no update. */
export function monthParts(doc: Y.Doc): MonthDocParts {
  return { meta: doc.getMap("meta"), slots: doc.getMap("slots") };
}

export const SLOT_MINUTES = { min: 5, max: 480 } as const;
