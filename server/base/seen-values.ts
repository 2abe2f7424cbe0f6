/** Two people who change the same settings: what each of them changed is taken, unless both changed one thing. */
import { sameData } from "#lib/plan/same-data.ts";
import { fail, type Result } from "./result.ts";

type Values = Readonly<Record<string, unknown>>;

type OverSeen<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly clash: readonly (keyof T)[] };

/**
 * `next` over `now`, by key, for somebody who was shown `seen`: keys that they left alone stay as they are now, whoever
 * changed them meanwhile. A key that somebody else gave yet another value is a clash, and nothing is taken.
 */
export function overSeen<T extends object>(now: T, seen: Partial<T>, next: Partial<T>): OverSeen<T> {
  const [is, was, becomes] = [now as Values, seen as Values, next as Values];
  const changed = Object.keys(becomes).filter((key) => !sameData(was[key], becomes[key]));
  const clash = changed.filter((key) => !sameData(is[key], was[key]) && !sameData(is[key], becomes[key]));
  if (clash.length > 0) return { ok: false, clash: clash as (keyof T)[] }; // keys of next
  return { ok: true, value: { ...now, ...Object.fromEntries(changed.map((key) => [key, becomes[key]])) } };
}

/** `what`: "the time zone". */
export const changedMeanwhile = (what: string): Result<never> =>
  fail(
    409,
    "changed-meanwhile",
    `Somebody else has changed ${what} meanwhile. Nothing of yours was saved: reload the page and change it again.`,
  );
