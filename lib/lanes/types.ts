/**
 * The whole class as lanes over time: one lane per question (which move, which springs, facing where, ...), one cell per
 * item. Plain data in seconds, made from a plan by `class-lanes.ts`; `axis.ts` turns seconds into pixels.
 */
import type { SpringCount } from "#lib/cues/springs.ts";
import type { Facing, Group, ItemSide, Move, MoveCaution } from "#lib/plan/schema.ts";

/** What takes time in a class: an item, the opening or the closing. */
export interface LaneColumn {
  /** The item's id, or ":opening" or ":closing", which no item can be called. */
  readonly key: string;
  readonly item: string | null;
  readonly kind: "opening" | "move" | "pause" | "closing";
  /** 1, 2, ... among the moves; 0 unless it is a move. */
  readonly number: number;
  /** Its name with the side: "Kneeling row, left". */
  readonly name: string;
  /** When the change into it begins, when it begins and ends. Seconds. */
  readonly gapFrom: number;
  readonly from: number;
  readonly to: number;
}

export interface ClassCell {
  /** Unique in its lane: the column's key, or a heading's id. */
  readonly key: string;
  readonly item: string | null;
  /** The name of the column or the heading. */
  readonly name: string;
  /** Indices of the first and the last column that it covers. */
  readonly first: number;
  readonly last: number;
  readonly from: number;
  readonly to: number;
  /** All that the cell shows, in words. */
  readonly say: string;
}

export interface WorkCell extends ClassCell {
  /** The name without the side. */
  readonly bare: string;
  readonly number: number;
  readonly timed: LaneColumn["kind"];
  readonly side: ItemSide;
  /** Null unless it is a move that the plan carries. */
  readonly pattern: Move["pattern"] | null;
  /** For its figure; null as the pattern is. */
  readonly move: Move | null;
  /** Where it is not the move's own. */
  readonly facing: Facing | null;
  readonly known: boolean;
  readonly locked: boolean;
}
/** A stretch of neighbouring moves with the same value, drawn once. */
export interface Run<T> {
  readonly key: string;
  readonly from: number;
  readonly to: number;
  readonly value: T;
}
/** The time between two moves in which something changes. */
export interface Turn {
  readonly key: string;
  readonly from: number;
  readonly to: number;
  /** Short enough for a mark: "+2 −1". */
  readonly words: string;
}
export interface FacingAndStation {
  readonly facing: Facing;
  readonly station: Move["station"];
}
export interface TalkCell extends ClassCell {
  /** Talk divided by the time available. */
  readonly share: number;
}
export interface BreathCell extends ClassCell {
  /** Null for a hold. */
  readonly reps: number | null;
  /** Seconds of one repetition: out, held, back, held; null for a hold. */
  readonly cycle: readonly [number, number, number, number] | null;
  readonly exhaleOn: "out" | "back" | null;
}
export interface WeightCell extends ClassCell {
  /** 0..1: 1 prime mover, 0.5 helper. */
  readonly weight: number;
}
export interface VoiceCell extends ClassCell {
  /** When this item's lines are said. May lie outside its cell: the first set-up is said during the opening. */
  readonly spans: readonly {
    readonly key: string;
    readonly from: number;
    readonly to: number;
    readonly call: boolean;
  }[];
  /** How many lines are set aside because there is no time. */
  readonly dropped: number;
}
export interface CrewCell extends ClassCell {
  readonly text: string;
}
export interface FoundCell extends ClassCell {
  readonly must: number;
  readonly look: number;
  readonly info: number;
}
export interface ThreadsCell extends ClassCell {
  /** How many open threads. */
  readonly threads: number;
}

export interface PresentCell extends ClassCell {
  /** Names of others who are on the item now. */
  readonly people: readonly string[];
}

interface Head {
  readonly id: string;
  readonly name: string;
  /** A smaller note next to the lane's name: its share, or whom it concerns. */
  readonly note?: string;
}
export type Lane =
  | (Head & { readonly kind: "headings"; readonly cells: readonly ClassCell[] })
  | (Head & { readonly kind: "work"; readonly cells: readonly WorkCell[] })
  | (Head & {
      readonly kind: "springs";
      readonly cells: readonly ClassCell[];
      readonly runs: readonly Run<readonly SpringCount[]>[];
      readonly turns: readonly Turn[];
    })
  | (Head & {
      readonly kind: "standing";
      readonly cells: readonly ClassCell[];
      readonly runs: readonly Run<FacingAndStation>[];
    })
  | (Head & { readonly kind: "talk"; readonly cells: readonly TalkCell[] })
  | (Head & { readonly kind: "breath"; readonly cells: readonly BreathCell[] })
  | (Head & { readonly kind: "muscle"; readonly group: Group; readonly cells: readonly WeightCell[] })
  | (Head & {
      readonly kind: "caution";
      readonly caution: MoveCaution;
      /** Somebody whom it concerns is expected in the room. */
      readonly expected: boolean;
      readonly cells: readonly ClassCell[];
    })
  | (Head & { readonly kind: "voice"; readonly cells: readonly VoiceCell[] })
  | (Head & { readonly kind: "crew"; readonly cells: readonly CrewCell[] })
  | (Head & { readonly kind: "found"; readonly cells: readonly FoundCell[] })
  | (Head & { readonly kind: "threads"; readonly cells: readonly ThreadsCell[] })
  | (Head & { readonly kind: "present"; readonly cells: readonly PresentCell[] });

export type LaneKind = Lane["kind"];

export interface ClassLanes {
  readonly columns: readonly LaneColumn[];
  /** In drawing order. Lanes without cells are left out, except for work. */
  readonly lanes: readonly Lane[];
  /** Seconds: the class with opening and closing, and its slot. */
  readonly total: number;
  readonly lengthSeconds: number;
}
