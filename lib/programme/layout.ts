/**
 * Where a month's slots live inside its shared document. Only `lib/programme` knows this.
 *
 *   meta   Map   version, month ('YYYY-MM')
 *   slots  Map   slot id -> Map: date, time, minutes, coachId, roomId, planId, deleted; theme, note (Text)
 *
 * One flat key a value, so two people changing different things of one slot both count; what is typed is shared text,
 * so two people typing in one note lose no letter. Keys this version does not know are left alone.
 */
import type * as Y from "yjs";

/** Bumped when the meaning of a key changes; `migrate.ts` carries older documents forward. */
export const MONTH_DOC_VERSION = 1;

export type SlotMap = Y.Map<unknown>;

/** One class of the programme. */
export interface Slot {
  readonly id: string;
  /** 'YYYY-MM-DD', a day of the document's month. */
  readonly date: string;
  /** 'HH:MM', wall-clock time of the studio's town. */
  readonly time: string;
  /** Whole minutes the room is taken. */
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

/** The typed roots of a month document. Reading a root creates nothing that is sent to anybody. */
export function monthParts(doc: Y.Doc): MonthDocParts {
  return { meta: doc.getMap("meta"), slots: doc.getMap("slots") };
}

export const SLOT_MINUTES = { min: 5, max: 480 } as const;
