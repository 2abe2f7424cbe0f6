/** Revisions of a month as its document holds them: see `keep-revisions.ts`, which is the only code that makes them. */
import type * as Y from "yjs";
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

/** `noted`: the revision under a key of the map. */
export function readRevisions(map: Y.Map<unknown>, noted: (key: string) => Revision | undefined): Revisions {
  const slots: Record<string, Revision> = {};
  const themes: Record<string, number> = {};
  for (const key of [...map.keys()].sort()) {
    if (key.startsWith(THEME_STAMP)) themes[key.slice(THEME_STAMP.length)] = stampOf(map.get(key));
    else if (key !== MONTH_STAMP && idOf(key) !== undefined) slots[key] = noted(key) ?? { n: 0, at: 0 };
  }
  return { slots, themes, month: stampOf(map.get(MONTH_STAMP)) };
}

/** Nothing noted, where there is none or it is damaged. */
export function revisionOf(value: unknown): Revision {
  const { n, at, ...rest } = (typeof value === "object" && value !== null ? value : {}) as Partial<Revision>;
  return { ...rest, n: Math.max(0, Math.round(stampOf(n))), at: stampOf(at) };
}
