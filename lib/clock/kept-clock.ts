/**
 * The clock of a plan while it is being written. A time that changes moves everything after it, and mostly only moves it, so
 * each row is also kept as it is counted from its own start.
 */
import { KeptEach } from "#lib/memo/kept.ts";
import { tenth } from "#lib/numbers/round.ts";
import type { ClassClock, ClockRow } from "./clock.ts";

export interface KeptClock {
  readonly clock: ClassClock;
  /** The rows of `clock`, each in seconds from the start of its work. Rows that are equal stay the same value in both. */
  readonly ownRows: readonly ClockRow[];
}

export class ClockKeeper {
  private readonly own = new KeptEach<ClockRow>();
  private readonly placed = new KeptEach<ClockRow>();

  keep({ rows, total }: ClassClock): KeptClock {
    this.own.round();
    this.placed.round();
    const ownRows = rows.map((row) => this.own.get(row.item, ownReads(row), () => ownRow(row)));
    const kept = rows.map((row, n) => this.placed.get(row.item, [ownRows[n], row.start], () => row));
    return { clock: { total, rows: kept }, ownRows };
  }
}

/** The row in seconds from the start of its work. */
const ownRow = (row: ClockRow): ClockRow => ({
  ...row,
  transitionFrom: changeFrom(row),
  start: 0,
  end: workTo(row),
});

const changeFrom = ({ transitionFrom, start }: ClockRow): number => tenth(transitionFrom - start);
const workTo = ({ start, end }: ClockRow): number => tenth(end - start);

const ownReads = (row: ClockRow): readonly unknown[] => {
  const { planned, estimate, telling, actions } = row.transition;
  return [changeFrom(row), workTo(row), row.reps, planned, estimate, telling, ...Object.entries(actions).flat()];
};
