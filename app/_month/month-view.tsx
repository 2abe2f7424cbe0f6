"use client";
/**
 * The month: weeks one under another, every day a short rail from which its classes hang, like times side by side.
 * On a phone the same days stand in one list. Everybody's changes show as they happen.
 */
import Link from "next/link";
import { useState } from "react";
import { ClosedNotice } from "#app/_parts/closed-notice.tsx";
import { Corner } from "#app/_parts/corner.tsx";
import { PageKeys, type PageKeysProps } from "#app/_parts/key-help.tsx";
import { NoLiveNotice } from "#app/_parts/no-live-notice.tsx";
import { NotUndoneNotice } from "#app/_parts/not-undone-notice.tsx";
import { OvertakenNotice } from "#app/_parts/overtaken-notice.tsx";
import { useUndoKeys } from "#app/_parts/use-undo-keys.ts";
import { MONTH_BOUNDS, nearBounds } from "#lib/doc/bounds.ts";
import { agree } from "#lib/plan/format.ts";
import { addMonths, daysOfMonth, weeksOfMonth } from "#lib/programme/calendar.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { restoreSlot } from "#lib/programme/write.ts";
import { weekBands } from "./bands.ts";
import { Day } from "./day.tsx";
import styles from "./month.module.css";
import { MonthHead } from "./month-head.tsx";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot, SlotDialogSubject } from "./month-types.ts";
import { slotName } from "./month-values.ts";
import { SlotDialog } from "./slot-dialog.tsx";
import { useDayKeys } from "./use-day-keys.ts";
import { useMonth, useMonthSession } from "./use-month.ts";
import { dayWords, monthTitle } from "./words.ts";

const MONTH_KEYS: PageKeysProps = {
  parts: [
    {
      title: "In the month",
      keys: [
        ["← →", "the day before or after"],
        ["↑ ↓", "the same day of the week before or after"],
        ["Home, End", "the first or the last day"],
      ],
    },
  ],
  undo: true,
};

export function MonthView(props: MonthPageProps) {
  const session = useMonthSession(props);
  return session ? <OpenMonth session={session} props={props} /> : <p role="status">Opening the month…</p>;
}

function OpenMonth({ session, props }: { readonly session: MonthSession; readonly props: MonthPageProps }) {
  const month = useMonth(session);
  useUndoKeys(session);
  const [asked, setAsked] = useState<SlotDialogSubject>(null);
  const days = daysOfMonth(props.month);
  const near = nearBounds(session.doc, MONTH_BOUNDS);
  const [showPast, setShowPast] = useState(false);
  const weeks = weeksOfMonth(props.month);
  const isOver = (dates: readonly (string | null)[]) => dates.every((date) => date === null || date < month.today);
  // The weeks that are over are folded away while the month still runs.
  const folded = !showPast && days.includes(month.today) ? weeks.filter(isOver) : [];
  const shown = weeks.filter((dates) => !folded.includes(dates));
  const keys = useDayKeys(
    shown.flat().filter((date) => date !== null),
    month.today,
  );
  return (
    <>
      <MonthHead session={session} props={props} month={month} />
      {near === undefined ? null : <p role="status">{near}</p>}
      {month.closeCode !== null && month.closeSentence !== null ? (
        <ClosedNotice session={session} code={month.closeCode} sentence={month.closeSentence} />
      ) : null}
      <PageKeys of={MONTH_KEYS} />
      <NoLiveNotice sentence={month.noLive} />
      {folded.length > 0 && month.ready ? (
        <button type="button" className={`button ${styles.past}`} onClick={() => setShowPast(true)}>
          Show the {agree(folded.length, "week that is", `${folded.length} weeks that are`)} over
        </button>
      ) : null}
      {month.ready ? (
        // biome-ignore lint/a11y/noStaticElementInteractions: arrow keys between the days' own buttons, which take the focus
        <div className={styles.weeks} onKeyDown={keys.onKeyDown}>
          {shown.map((dates) => (
            <Week
              key={dates.find((date) => date !== null) ?? ""}
              dates={dates}
              month={month}
              props={props}
              current={keys.current}
              onAsk={setAsked}
            />
          ))}
        </div>
      ) : (
        month.noLive === null && <p role="status">Opening the month…</p>
      )}
      <nav className={styles.turn} aria-label="Other months">
        {[-1, 1].map((step) => {
          const other = addMonths(props.month, step);
          return (
            <Link key={other} className="button" href={`/programme/${other}`}>
              {monthTitle(other)}
            </Link>
          );
        })}
      </nav>
      <TakenOut session={session} month={month} />
      <NotUndoneNotice sentence={month.notUndone} />
      <Corner>
        <OvertakenNotice overtaken={month.overtaken} onClose={() => session.closeOvertaken()} />
      </Corner>
      <p className="visually-hidden" role="status" aria-live="polite">
        {month.said}
      </p>
      {asked ? (
        <SlotDialog
          session={session}
          month={month}
          props={props}
          asked={asked}
          onClose={() => setAsked(null)}
          onAsk={setAsked}
        />
      ) : null}
    </>
  );
}

interface WeekProps {
  readonly dates: readonly (string | null)[];
  readonly month: MonthSnapshot;
  readonly props: MonthPageProps;
  readonly current: string;
  readonly onAsk: (asked: SlotDialogSubject) => void;
}

function Week({ dates, month, props, current, onAsk }: WeekProps) {
  const own = dates.filter((date) => date !== null);
  const { bands, of } = weekBands(own, month.slots);
  return (
    <div className={styles.week} style={{ gridTemplateRows: `auto repeat(${Math.max(1, bands.length)}, auto) 1fr` }}>
      {dates.map((date, weekday) =>
        date === null ? null : (
          <Day
            key={date}
            date={date}
            column={weekday + 1}
            bands={bands}
            slots={of}
            month={month}
            props={props}
            isCurrent={date === current}
            onAsk={onAsk}
          />
        ),
      )}
    </div>
  );
}

function putBack(session: MonthSession, slot: Slot): void {
  if (session.act((w) => restoreSlot(w, slot.id))) session.say(`Put back: ${slotName(slot)}.`);
}

function TakenOut({ session, month }: { readonly session: MonthSession; readonly month: MonthSnapshot }) {
  if (month.deleted.length === 0 || !month.writes) return null;
  const words = (slot: Slot) => `${dayWords(slot.date)}, ${slot.time}, ${slot.theme || "no theme"}`;
  return (
    <section className={styles.taken}>
      <h2>Taken out</h2>
      <ul>
        {month.deleted.slice(0, 12).map(({ slot }) => (
          <li key={slot.id}>
            {words(slot)}
            <button type="button" className="act" onClick={() => putBack(session, slot)}>
              Put back<span className="visually-hidden"> {words(slot)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
