/** What a sheet keeps from one laying out to the next: a day whose classes and findings say the same stays the same object. */
import { keepSame } from "#lib/memo/keep-same.ts";
import { KeptEach } from "#lib/memo/kept.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { type MarksOf, markOf, toLabel } from "./day-marks.ts";
import { placeLabels, stackLabels } from "./rail-labels.ts";
import type { TideAxis } from "./time-axis.ts";
import type { RailLabel, TideMark, TideSheet, TideSizes } from "./types.ts";

export class SheetKept {
  private readonly marks = new KeptEach<TideMark>();
  private readonly labels = new KeptEach<readonly RailLabel[]>();
  private rooms: readonly string[] = [];
  private last: TideSheet | undefined;

  /** The hours across of the laying out before, where it was as wide (px). */
  hoursAt(width: number): TideAxis | undefined {
    return this.last?.axis.width === width ? this.last.axis : undefined;
  }

  /** Begins a laying out, and says where its marks stand. */
  begin(of: MarksOf): MarksOf {
    this.marks.round();
    this.labels.round();
    this.rooms = keepSame(this.rooms, of.rooms);
    return { ...of, rooms: this.rooms, axis: keepSame(this.last?.axis, of.axis) };
  }

  mark(of: MarksOf, slot: MonthSlot): TideMark {
    const { month, axis, rooms, regulars, formats } = of;
    const named = [month.plans, month.coaches, month.themes, month.rooms, month.regulars];
    return this.marks.get(slot.id, [slot, axis, rooms, regulars, formats, ...named], () => markOf(of, slot));
  }

  /** A class taken out leaves room for those that are on: it has a mark, and its words are in the day's list. */
  labelsOf(date: string, marks: readonly TideMark[], { kind, railWidth, measure }: TideSizes): readonly RailLabel[] {
    if (kind === "phone") return NONE;
    const place = kind === "laptop" ? placeLabels : stackLabels;
    return this.labels.get(date, [kind, railWidth, measure, ...marks], () =>
      place(marks.map(toLabel), { width: railWidth, measure }),
    );
  }

  end(sheet: TideSheet): TideSheet {
    this.last = keepSame(this.last, sheet);
    return this.last;
  }
}

const NONE: readonly RailLabel[] = [];
