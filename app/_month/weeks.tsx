"use client";
/** The weeks of the month. While it still runs, weeks that are over are folded away. */
import { useState } from "react";
import { daysOfMonth, weeksOfMonth } from "#lib/calendar/days.ts";
import { Day } from "./day.tsx";
import { weekByParts } from "./day-parts.ts";
import styles from "./month.module.css";
import type { MonthPageProps, MonthSnapshot, SlotDialogSubject } from "./month-types.ts";
import { showPastWords } from "./month-words.ts";
import { useDayKeys } from "./use-day-keys.ts";

interface WeeksProps {
  readonly month: MonthSnapshot;
  readonly props: MonthPageProps;
  readonly onAsk: (asked: SlotDialogSubject) => void;
}

type Dates = readonly (string | null)[];
const isDate = (date: string | null): date is string => date !== null;

export function Weeks({ month, props, onAsk }: WeeksProps) {
  const [showPast, setShowPast] = useState(false);
  const weeks = weeksOfMonth(props.month);
  const isOver = (dates: Dates) => dates.every((date) => date === null || date < month.today);
  const folded = !showPast && daysOfMonth(props.month).includes(month.today) ? weeks.filter(isOver) : [];
  const shown = weeks.filter((dates) => !folded.includes(dates));
  const keys = useDayKeys(shown.flat().filter(isDate), month.today);
  return (
    <>
      {folded.length > 0 && (
        <button type="button" className={`button ${styles.past}`} onClick={() => setShowPast(true)}>
          {showPastWords(folded.length)}
        </button>
      )}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: keys between the days' own buttons, which take the focus */}
      <div className={styles.weeks} onKeyDown={keys.onKeyDown}>
        {shown.map((dates) => (
          <Week key={dates.find(isDate) ?? ""} {...{ dates, month, props, onAsk }} current={keys.current} />
        ))}
      </div>
    </>
  );
}

interface WeekProps extends WeeksProps {
  readonly dates: Dates;
  /** The day that Tab reaches. */
  readonly current: string;
}

function Week({ dates, month, props, current, onAsk }: WeekProps) {
  const { dayParts, of } = weekByParts(dates.filter(isDate), month.slots);
  const rows = `auto repeat(${Math.max(1, dayParts.length)}, auto) 1fr`;
  return (
    <div className={styles.week} style={{ gridTemplateRows: rows }}>
      {dates.map((date, weekday) =>
        date === null ? null : (
          <Day
            key={date}
            {...{ date, dayParts, month, props, onAsk }}
            column={weekday + 1}
            slots={of}
            isCurrent={date === current}
          />
        ),
      )}
    </div>
  );
}
