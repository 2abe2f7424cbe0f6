/** What the drawn sheet is given, and what it tells. It knows no session: the page decides what a press does. */
import type { KeyboardEvent, PointerEvent } from "react";
import type { TideLayout } from "#lib/tide/layout.ts";
import type { TideSheet } from "#lib/tide/types.ts";

/** Somebody else in the month, and the class that they have open. */
export interface SheetGuest {
  readonly name: string;
  readonly slot: string | null;
}

export interface SheetHands {
  onOpen(slot: string): void;
  onAdd(date: string): void;
  onFinding(id: string): void;
  onFocusSlot(slot: string): void;
  onKeyDown(event: KeyboardEvent<HTMLElement>): void;
  /** A press on a class that may become a drag. */
  onGrab(event: PointerEvent<HTMLElement>, slot: string): void;
  onPoint(slot: string | null): void;
}

export interface SheetShown {
  readonly sheet: TideSheet;
  readonly layout: TideLayout;
  readonly tops: readonly number[];
  /** What Tab reaches: a class's id, or a day. */
  readonly tabStop: string;
  readonly openSlot: string | null;
  /** Lit up, with its drops. */
  readonly lit: string | null;
  /** On its way to another time, not written yet. */
  readonly moving: string | null;
  /** A coach whose classes alone stay dark. */
  readonly onlyCoach: string | null;
  /** Classes for which the fill proposes a plan that is not in the month yet. */
  readonly proposed: ReadonlySet<string>;
  /** What became of classes since the month was signed, in words. */
  readonly changed: ReadonlyMap<string, string>;
  readonly finding: { readonly id: string; readonly slots: readonly string[]; readonly says: string } | null;
  readonly today: string;
  readonly writes: boolean;
  readonly guests: readonly SheetGuest[];
}

export interface TideSheetProps {
  readonly shown: SheetShown;
  readonly hands: SheetHands;
}
