/** One day: its name on top, its rail, and the classes that hang from it. */
import type { Slot } from "#lib/programme/layout.ts";
import { type Band, cellKey } from "./bands.ts";
import styles from "./month.module.css";
import type { MonthPageProps, MonthSnapshot, SlotDialogSubject } from "./month-types.ts";
import { SlotItem } from "./slot-item.tsx";
import { dayName, dayOfMonth, dayWords } from "./words.ts";

interface DayProps {
  readonly date: string;
  /** 1 Monday to 7 Sunday. */
  readonly column: number;
  readonly bands: readonly Band[];
  readonly slots: ReadonlyMap<string, readonly Slot[]>;
  readonly month: MonthSnapshot;
  readonly props: MonthPageProps;
  /** The one day of the month that Tab reaches; arrows move on from it. */
  readonly isCurrent: boolean;
  readonly onAsk: (asked: SlotDialogSubject) => void;
}

export function Day({ date, column, bands, slots, month, props, isCurrent, onAsk }: DayProps) {
  const own = bands.flatMap((band) => slots.get(cellKey(date, band)) ?? []);
  const time = date < month.today ? "over" : date === month.today ? "today" : "coming";
  const name = (
    <>
      <span className={styles.number}>{dayOfMonth(date)}</span> <span className={styles.weekday}>{dayName(date)}</span>
      {time === "today" ? <span className={styles.now}> today</span> : null}
    </>
  );
  return (
    <article
      className={styles.day}
      style={{ gridColumn: column }}
      data-date={date}
      data-time={time}
      data-empty={own.length === 0 ? "" : undefined}
      aria-label={dayWords(date)}
    >
      <h2 className={styles.dayHead}>
        <button
          type="button"
          className={styles.dayName}
          data-day={date}
          tabIndex={isCurrent ? 0 : -1}
          onClick={() => {
            if (month.writes) onAsk({ date });
          }}
        >
          <span className="visually-hidden">{month.writes ? `${dayWords(date)}: add a class` : dayWords(date)}</span>
          <span aria-hidden="true">{name}</span>
          {month.writes ? (
            <span className={styles.add} aria-hidden="true">
              add
            </span>
          ) : null}
        </button>
      </h2>
      {bands.length === 0 ? <div className={`hung ${styles.cell}`} style={{ gridRow: 2 }} /> : null}
      {bands.map((band, row) => (
        <div key={band} className={`hung ${styles.cell}`} style={{ gridRow: row + 2 }}>
          {(slots.get(cellKey(date, band)) ?? []).map((slot) => (
            <SlotItem key={slot.id} slot={slot} month={month} props={props} onOpen={() => onAsk({ slotId: slot.id })} />
          ))}
        </div>
      ))}
    </article>
  );
}
