"use client";
/**
 * What has changed about each plate since the text that this person compares with: worked out by `app/_rounds`, drawn by the
 * rail and in open plates, walked through by the page's commands.
 */
import { useSyncExternalStore } from "react";
import type { Plan } from "#lib/plan/schema.ts";
import type { ChangedPlate } from "#lib/plan-diff/changed-plates.ts";
import type { StateNews } from "#lib/protocol/messages.ts";
import type { RoundsView } from "#lib/rounds/rounds.ts";

/** What a closed plate says of it. */
export interface ChangeMark {
  /** Null: the plate is as it was, but something beside it was removed. */
  readonly word: "new" | "changed" | "moved" | null;
  /** Whether this lead has read it; null for who is not asked to read. */
  readonly read: boolean | null;
  /** Names of plates that were removed from right above it, and from under it at the end of the class. */
  readonly goneAbove: readonly string[];
  readonly goneBelow: readonly string[];
}

export interface ChangesNow {
  readonly marks: ReadonlyMap<string, ChangeMark>;
  readonly plates: ReadonlyMap<string, ChangedPlate>;
  /** Changed plates that are in the plan, in its order. */
  readonly order: readonly string[];
  /** All there is to compare with; null until it is here. */
  readonly rounds: RoundsView | null;
  /** Which of it is compared with; null for nothing. */
  readonly point: string | null;
  /** Its text; null until it is here. */
  readonly before: Plan | null;
  /** Compares with another point; null for nothing. */
  readonly choose: (point: string | null) => void;
  /** Marks the plate as read, or takes the mark back; null for who is not asked to read. */
  readonly setRead: ((itemId: string, on: boolean) => void) | null;
}

const NOTHING: ChangesNow = {
  ...{ marks: new Map(), plates: new Map(), order: [], rounds: null, point: null, before: null, setRead: null },
  choose: () => undefined,
};

export class ChangesShown {
  private now: ChangesNow = NOTHING;
  private readonly listeners = new Set<() => void>();

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  readonly get = (): ChangesNow => this.now;

  show(now: ChangesNow): void {
    this.now = now;
    for (const listener of this.listeners) listener();
  }
}

export const useChangesShown = (changes: ChangesShown): ChangesNow =>
  useSyncExternalStore(changes.subscribe, changes.get, () => NOTHING);

/** Whether there is anything to compare a plan with. */
export const hasRounds = ({ state }: { readonly state: StateNews }): boolean =>
  state.round !== undefined || state.edition > 0;

/**
 * The changed plate after or before the chosen one, then from the other end again. Forwards to one that is not read yet, where
 * reading is asked for and any is left; otherwise to any. Undefined where no plate has changed.
 */
export function nextChanged(
  { order, marks }: Pick<ChangesNow, "order" | "marks">,
  places: readonly string[],
  chosen: string | null,
  by: 1 | -1,
): string | undefined {
  const others = order.filter((id) => id !== chosen);
  const unread = others.filter((id) => marks.get(id)?.read !== true);
  const left = by === 1 && unread.length > 0 ? unread : others;
  const ordered = by === 1 ? left : left.toReversed();
  const at = chosen === null ? -1 : places.indexOf(chosen);
  const isPast = (id: string) => (by === 1 ? places.indexOf(id) > at : places.indexOf(id) < at);
  return (at < 0 ? undefined : ordered.find(isPast)) ?? ordered[0] ?? order[0];
}

/** Whether a changed plate besides the chosen one waits to be read. */
export const isAnyLeft = ({ order, marks }: Pick<ChangesNow, "order" | "marks">, chosen: string | null): boolean =>
  order.some((id) => id !== chosen && marks.get(id)?.read === false);
