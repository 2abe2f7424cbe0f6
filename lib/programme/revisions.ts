/** Revisions of a month as its document holds them: see `keep-revisions.ts`, which is the only code that makes them. */
import type * as Y from "yjs";
import { keepSame } from "#lib/memo/keep-same.ts";
import { own } from "#lib/plan/lookup.ts";
import { DOT } from "./layout.ts";
import { idOf } from "./values.ts";

/** Times in ms since the epoch. */
export interface Revision {
  /** SEQUENCE of RFC 5545 §3.8.7.4. */
  readonly n: number;
  readonly at: number;
  /** Since when its coach and its room have it; left out: since it was made. */
  readonly coachSince?: number;
  readonly roomSince?: number;
  readonly formerCoaches?: readonly string[];
  readonly formerRooms?: readonly string[];
  /** The number that it got by its last change on a near day, or away from one: calendars have told it as it stood then. */
  readonly near?: number;
  /** What an imported file said of it, though it is nothing. */
  readonly said?: readonly ("sequence" | "formerCoaches" | "formerRooms")[];
}

export interface Revisions {
  readonly slots: Readonly<Record<string, Revision>>;
  /** When a theme's name was changed. */
  readonly themes: Readonly<Record<string, number>>;
  /** The month's last change; 0 where nobody has written. */
  readonly month: number;
}

export const THEME_STAMP = `theme${DOT}`;
export const MONTH_STAMP = "month";
const stampOf = (v: unknown): number => (typeof v === "number" && Number.isFinite(v) && v > 0 ? v : 0);

/** The greatest INTEGER of RFC 5545 §3.3.8, as which SEQUENCE is written. */
const MOST_NUMBER = 2_147_483_647;

/** The number after this one. */
export const nextNumber = (n: number): number => Math.min(n + 1, MOST_NUMBER);

export const NO_REVISIONS: Revisions = { slots: {}, themes: {}, month: 0 };

/** What the map says, where it said `was` before these of its keys changed. */
export function revisionsAfter(was: Revisions, map: Y.Map<unknown>, changed: ReadonlySet<string>): Revisions {
  const slots = { ...was.slots };
  const themes = { ...was.themes };
  for (const key of changed) {
    const there = map.has(key);
    if (key.startsWith(THEME_STAMP)) setOrDelete(themes, key.slice(THEME_STAMP.length), there, stampOf(map.get(key)));
    else if (key !== MONTH_STAMP && idOf(key) !== undefined)
      setOrDelete(slots, key, there, keepSame(own(slots, key), revisionOf(map.get(key))));
  }
  return { slots, themes, month: stampOf(map.get(MONTH_STAMP)) };
}

function setOrDelete<T>(record: Record<string, T>, key: string, there: boolean, value: T): void {
  if (there) record[key] = value;
  else delete record[key];
}

/** Nothing noted, where there is none or it is damaged. */
export function revisionOf(value: unknown): Revision {
  const { n, at, ...rest } = (typeof value === "object" && value !== null ? value : {}) as Partial<Revision>;
  return { ...rest, n: Math.min(Math.round(stampOf(n)), MOST_NUMBER), at: stampOf(at) };
}
