/**
 * Where a month is in its shared document. Only `lib/programme` knows this.
 *
 *   meta      Map   version, month ('YYYY-MM')
 *   title     Text
 *   head      Map   from, to (where the file was not a whole month), given, `fill.slots.SLOT`, `fill.plans.PLAN`, `fill.wishes.SLOT.PLAN`,
 *                   fill.mostUses
 *   holidays  Map   DATE -> name
 *   regulars  Map   id -> Map: people, deleted; name (Text)
 *   themes    Map   id -> Map: promised, `share.GROUP`, deleted; name (Text)
 *   coaches   Map   `COACH.free.KEY`, `COACH.away.KEY` -> one time, whole
 *   lines     Map   line id -> Map: the keys of a slot but date and out, order, every, weekStart, from, to, count, `days.DAY`, `nth.K`,
 *                   `except.DATE`, deleted; note (Text)
 *   slots     Map   slot id -> Map: date, time, minutes, coachId, roomId, planId, themeId, people, locked, out, `regulars.ID`, madeAt,
 *                   deleted; note (Text); theme (Text, what was typed in version 1)
 *   changed   Map   `SLOT.KEY` -> what differs in an occurrence from its line; null for nothing there; `SLOT.note.N` (Text)
 *   revisions Map   slot id, `theme.ID`, month -> when it was changed, how often, who had it before. Only the server writes it.
 *   carried   Map   `room.ID`, `coach.ID`, `plan.ID`, earlier: what came with an imported file. Only the server writes it.
 *
 * Each value has its own flat key, so that two people can change different values of one slot, and members of a list are a key
 * each, holding their rank. What people type is shared text. An occurrence has flat keys in one map and no map of its own: of two
 * maps made at once for one id, one would be lost with all that is in it. Unknown keys are left alone.
 */
import type * as Y from "yjs";

/** Raised when the meaning of a key changes; `migrate.ts` updates older documents. */
export const MONTH_DOC_VERSION = 2;

export type EntryMap = Y.Map<unknown>;

/** One class of the programme that takes place, as lists show it: also those that the pattern gives. */
export interface Slot {
  readonly id: string;
  /** 'YYYY-MM-DD', a day of the document's month. */
  readonly date: string;
  /** 'HH:MM', wall-clock time of the studio's zone. */
  readonly time: string;
  /** Whole minutes for which the room is booked. */
  readonly minutes: number;
  /** Its name; "" for none. */
  readonly theme: string;
  readonly coachId: string | null;
  readonly roomId: string | null;
  readonly planId: string | null;
  readonly note: string;
}

export interface MonthDocParts {
  readonly meta: Y.Map<unknown>;
  readonly title: Y.Text;
  readonly head: Y.Map<unknown>;
  readonly holidays: Y.Map<unknown>;
  readonly regulars: Y.Map<EntryMap>;
  readonly themes: Y.Map<EntryMap>;
  readonly coaches: Y.Map<unknown>;
  readonly lines: Y.Map<EntryMap>;
  readonly slots: Y.Map<EntryMap>;
  readonly changed: Y.Map<unknown>;
  readonly revisions: Y.Map<unknown>;
  readonly carried: Y.Map<unknown>;
}

/** The typed roots of a month document. Reading a root sends no update. */
export function monthParts(doc: Y.Doc): MonthDocParts {
  return {
    meta: doc.getMap("meta"),
    title: doc.getText("title"),
    head: doc.getMap("head"),
    holidays: doc.getMap("holidays"),
    regulars: doc.getMap("regulars"),
    themes: doc.getMap("themes"),
    coaches: doc.getMap("coaches"),
    lines: doc.getMap("lines"),
    slots: doc.getMap("slots"),
    changed: doc.getMap("changed"),
    revisions: doc.getMap("revisions"),
    carried: doc.getMap("carried"),
  };
}

/** What undo of one's own acts reaches. */
export const monthUndoScopes = (doc: Y.Doc) => {
  const { title, head, holidays, regulars, themes, coaches, lines, slots, changed } = monthParts(doc);
  return [title, head, holidays, regulars, themes, coaches, lines, slots, changed];
};

export const SLOT_MINUTES = { min: 5, max: 480 } as const;

export const wholeMinutes = (n: number): number =>
  Math.min(SLOT_MINUTES.max, Math.max(SLOT_MINUTES.min, Math.round(Number.isFinite(n) ? n : SLOT_MINUTES.min)));

/** Between a slot's id and its key in `changed`, and between a list and its member. Ids have no dots. */
export const DOT = ".";
export const MONTH_SHARE_KEY = "share.";
/** True where an occurrence's note is its own and not its line's, null where it has none; true too where an empty note was given. */
export const NOTE_OWN = "noteOwn";
/** The words of the line that an occurrence's own text began with: until they differ, the line's note counts. */
export const NOTE_FROM = "noteFrom";
/** In `changed`: the occurrence leaves out what its line has, which is not the same as expressly nothing. */
export const LEFT_OUT = "";
/** The keys of a slot that hold one plain value, by their name in the month file. */
export const SLOT_KEYS = {
  date: "date",
  start: "time",
  minutes: "minutes",
  room: "roomId",
  coach: "coachId",
  plan: "planId",
  theme: "themeId",
  people: "people",
  locked: "locked",
  out: "out",
} as const;

/** The keys of a line's rule that hold one plain value. */
export const RULE_KEYS = ["every", "weekStart", "from", "to", "count"] as const;

const OCCURRENCE = /^(.{1,55})-(\d{4})(\d{2})(\d{2})$/;

/** The line and the date that an occurrence's id names; undefined for any other id. */
export function occurrenceOf(id: string): { readonly line: string; readonly date: string } | undefined {
  const [, line, year, month, day] = OCCURRENCE.exec(id) ?? [];
  return line === undefined ? undefined : { line, date: `${year}-${month}-${day}` };
}

export const occurrenceId = (line: string, date: string): string => `${line}-${date.replaceAll("-", "")}`;
