/** One day: its name on top, its rail, and the classes that hang from it. */
import type { Slot } from "#lib/programme/layout.ts";
import { cellKey, type DayPart } from "./day-parts.ts";
import styles from "./month.module.css";
import type { MonthPageProps, MonthSnapshot, SlotDialogSubject } from "./month-types.ts";
import { dayName, dayOfMonth, dayWords } from "./month-words.ts";
import { SlotItem } from "./slot-item.tsx";

interface DayProps {
  readonly date: string;
  /** 1 Monday to 7 Sunday. */
  readonly column: number;
  readonly dayParts: readonly DayPart[];
  readonly slots: ReadonlyMap<string, readonly Slot[]>;
  readonly month: MonthSnapshot;
  readonly props: MonthPageProps;
  /** The one day of the month that Tab reaches; arrows move on from it. */
  readonly isCurrent: boolean;
  readonly onAsk: (asked: SlotDialogSubject) => void;
}

export function Day(day: DayProps) {
  const { date, dayParts, slots, month, props, onAsk } = day;
  const isEmpty = dayParts.every((part) => !slots.has(cellKey(date, part)));
  return (
    <article
      className={styles.day}
      style={{ gridColumn: day.column }}
      data-date={date}
      data-time={date < month.today ? "over" : date === month.today ? "today" : "coming"}
      data-empty={isEmpty ? "" : undefined}
      aria-label={dayWords(date)}
    >
      <DayHead {...day} />
      {dayParts.length === 0 && <div className={`hung ${styles.cell}`} style={{ gridRow: 2 }} />}
      {dayParts.map((part, row) => (
        <div key={part} className={`hung ${styles.cell}`} style={{ gridRow: row + 2 }}>
          {(slots.get(cellKey(date, part)) ?? []).map((slot) => (
            <SlotItem key={slot.id} slot={slot} month={month} props={props} onOpen={() => onAsk({ slotId: slot.id })} />
          ))}
        </div>
      ))}
    </article>
  );
}

/** The day's name; for those who may write a button that adds a class. */
function DayHead({ date, month, isCurrent, onAsk }: DayProps) {
  return (
    <h2 className={styles.dayHead}>
      <button
        type="button"
        className={styles.dayName}
        data-day={date}
        tabIndex={isCurrent ? 0 : -1}
        onClick={() => month.writes && onAsk({ date })}
      >
        <span className="visually-hidden">{month.writes ? `${dayWords(date)}: add a class` : dayWords(date)}</span>
        <span aria-hidden="true">
          <span className={styles.number}>{dayOfMonth(date)}</span>{" "}
          <span className={styles.weekday}>{dayName(date)}</span>
          {date === month.today && <span className={styles.now}>today</span>}
        </span>
        {month.writes && (
          <span className={styles.add} aria-hidden="true">
            add
          </span>
        )}
      </button>
    </h2>
  );
}
