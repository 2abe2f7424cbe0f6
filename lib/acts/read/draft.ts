/** What words tell before they are held against a plan. */
import type { Facing, Move } from "#lib/plan/schema.ts";
import type { AmountPart } from "./amounts.ts";
import { type Matched, type Pattern, patternOf } from "./pattern.ts";
import type { SideWord, Unit } from "./units.ts";

/** What can stay as it is. `place` is station, turn and position together; `rest` all that is not named. */
export type Thing =
  | "springs"
  | "turn"
  | "station"
  | "position"
  | "place"
  | "side"
  | "handles"
  | "strap"
  | "all"
  | "rest";

/** `total`: all that is on, "down to one light"; `now` may also be what goes on, "one light". */
export type Amounts = "on" | "off" | "now" | "total" | "on-or-now" | "now-or-on" | "off-or-on" | "keep" | "has" | "any";

/**
 * `on-or-now`, or `now-or-on` where the second is the likelier: "two light on" is what goes on or what is on then. `has`: "you've one light on", which may be what was on. `some`: a change of springs that is not named. `any`: after a word that may put them on or take them off.
 * `any`: a turn without a way to face. `place`: "to the front", which may be where people go. `loose`: it is only about the thing if the plan has such an act, "put it down". `implied`: it follows from the words without being said, so no order is read from it.
 */
export type Draft =
  | { readonly act: "carriage-home"; readonly loose?: true }
  | {
      readonly act: "springs";
      readonly way: Amounts;
      readonly parts: readonly AmountPart[];
    }
  | { readonly act: "springs"; readonly way: "field" | "some" | "none" }
  /** The first for the second, or the other way round. */
  | { readonly act: "springs-swap"; readonly parts: readonly [readonly AmountPart[], readonly AmountPart[]] }
  | {
      readonly act: "turn";
      readonly to: Facing | "round" | "sideways" | "any" | "somewhere";
      readonly loose?: "relative" | "gaze" | "place" | "side";
    }
  /** `onSide`: the side that they lie on, where it is named. */
  | {
      readonly act: "position";
      readonly fits: readonly Move["position"][];
      readonly implied?: true;
      readonly onSide?: SideWord | undefined;
    }
  | { readonly act: "station"; readonly station: Move["station"] | "other" | "platform"; readonly implied?: true }
  | {
      readonly act: "handles-up" | "handles-down";
      readonly count: number | null;
      readonly implied?: true;
      readonly loose?: true;
      /** What it tells where the plan has no such act. */
      readonly or?: Draft;
    }
  | { readonly act: "handles-cross"; readonly un: boolean; readonly loose?: true }
  /** A thing that is only named. `count` or `bare`: it is all that a clause says, "two handles". */
  | { readonly act: "handles-some"; readonly count?: number | null }
  | { readonly act: "strap-some"; readonly bare?: true }
  | {
      readonly act: "strap-on" | "strap-off";
      readonly implied?: true;
      readonly loose?: true;
      readonly or?: Draft;
    }
  /** `limb`: the side of a hand or foot, which may only be near; `held`: it is in the strap. */
  | { readonly act: "side"; readonly side: SideWord; readonly limb?: true; readonly held?: true }
  | {
      readonly act: "stay";
      readonly of: Thing;
      readonly facing?: Facing;
      readonly position?: Move["position"];
      /** Of handles. */
      readonly count?: number;
      /** "The handle", which is one where the plan has one. */
      readonly single?: boolean;
    }
  /** Says something only when it is negated: "don't touch the springs". */
  | { readonly act: "touch"; readonly of: Thing };

/** The side of a hand or foot: "left arm", "other foot". */
export function limbSide(match: Matched): Draft[] {
  const word = found(match, "side");
  if (!word || word === "any" || word === "first") return [];
  if (word === "other") return [];
  return word === "same" ? [{ act: "stay", of: "side" }] : [{ act: "side", side: word, limb: true }];
}

/** Hands that are put down to bear weight: they hold no handle, in a position on the hands. */
export const HANDS_PLACED: readonly Draft[] = [
  { act: "handles-down", count: null, implied: true },
  { act: "position", fits: ["plank", "quadruped", "side-lying"], implied: true },
];

export interface Production {
  readonly pattern: Pattern;
  /** `start`: only where a clause begins. `whole`: only as a whole clause. `last`: no noun follows, "add one pulse". */
  readonly only: "start" | "whole" | "last" | undefined;
  /** Units taken by an element in a class, in order, make the drafts. */
  readonly drafts: (match: Matched) => readonly Draft[];
}

export const say = (
  source: string,
  drafts: readonly Draft[] | ((match: Matched) => readonly Draft[]),
  only?: Production["only"],
): Production => ({
  pattern: patternOf(source),
  only,
  drafts: typeof drafts === "function" ? drafts : () => drafts,
});

/** The first unit of a match that has such a thing. */
export function found<K extends "amount" | "station" | "facing" | "side" | "count">(
  { units }: Matched,
  key: K,
): NonNullable<Unit[K]> | undefined {
  for (const unit of units) {
    const value = unit[key];
    if (value !== undefined && value !== null) return value as NonNullable<Unit[K]>;
  }
  return undefined;
}
