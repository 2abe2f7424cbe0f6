"use client";
/**
 * The month as a tide table: a line a day, its classes on a rail, work and rest of each muscle group beside it. Everybody's
 * changes show as they happen.
 */
import { useEffect, useState } from "react";
import { flushSync } from "react-dom";
import { ClosedNotice } from "#app/_parts/closed-notice.tsx";
import { useUndoKeys } from "#app/_parts/commands/use-undo-keys.ts";
import { Corner } from "#app/_parts/corner.tsx";
import { PageKeys } from "#app/_parts/key-help.tsx";
import { NoLiveNotice } from "#app/_parts/no-live-notice.tsx";
import { NotUndoneNotice } from "#app/_parts/not-undone-notice.tsx";
import { OvertakenNotice } from "#app/_parts/overtaken-notice.tsx";
import { useMedia } from "#app/_parts/use-media.ts";
import { MONTH_BOUNDS, nearBounds } from "#lib/doc/bounds.ts";
import { overFullWords } from "#lib/programme/room-left.ts";
import styles from "./month.module.css";
import { MONTH_KEYS } from "./month-commands.ts";
import type { MonthDesk } from "./month-desk.ts";
import { MonthPaper } from "./month-paper.tsx";
import type { MonthSession } from "./month-session.ts";
import { MonthSheet, movingWords } from "./month-sheet.tsx";
import type { MonthPageProps } from "./month-types.ts";
import { MonthPanel } from "./panel.tsx";
import { useDesk } from "./use-desk.ts";
import { useMonthSession } from "./use-month.ts";
import { WallWeek } from "./wall-week.tsx";

const OPENING = <p role="status">Opening the month…</p>;

export interface MonthViewProps extends MonthPageProps {
  /** A room's week for the wall, in place of the month. */
  readonly wall?: { readonly room: string | null; readonly week: string | null } | null;
}

export function MonthView({ wall = null, ...props }: MonthViewProps) {
  const session = useMonthSession(props);
  return session ? <OpenedMonth session={session} props={props} wall={wall} /> : OPENING;
}

interface OpenedMonthProps {
  readonly session: MonthSession;
  readonly props: MonthPageProps;
  readonly wall: NonNullable<MonthViewProps["wall"]> | null;
}

function OpenedMonth({ session, props, wall }: OpenedMonthProps) {
  const desk = useDesk(session, props);
  const { month } = desk;
  const paper = usePaper();
  useUndoKeys(session);
  if (wall && month.ready) return <WallWeek desk={desk} wall={wall} />;
  return (
    <div className={styles.page} data-panel={desk.choice.panel ? "" : undefined}>
      <Notices desk={desk} />
      {month.ready && (paper ? <MonthPaper desk={desk} /> : <MonthSheet desk={desk} />)}
      {!month.ready && month.noLive === null && OPENING}
      {month.ready && !paper && <MonthPanel desk={desk} />}
      <NotUndoneNotice sentence={month.notUndone} />
      {!desk.choice.panel && (
        <Corner>
          <OvertakenNotice overtaken={month.overtaken} onClose={() => session.closeOvertaken()} />
        </Corner>
      )}
      <p className="visually-hidden" role="status" aria-live="polite">
        {movingWords(desk) || month.said}
      </p>
      <PageKeys of={MONTH_KEYS} />
    </div>
  );
}

/** Whether the page goes to paper just now: its sheet is laid out anew, for A4. */
function usePaper(): boolean {
  const media = useMedia("print");
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const listening = new AbortController();
    const options = { signal: listening.signal };
    // The paper is laid out before the browser takes its picture.
    addEventListener("beforeprint", () => flushSync(() => setPrinting(true)), options);
    addEventListener("afterprint", () => setPrinting(false), options);
    return () => listening.abort();
  }, []);
  return media || printing;
}

/** What stands between the person and the month. */
function Notices({ desk: { session, month } }: { readonly desk: MonthDesk }) {
  const near = nearBounds(session.doc, MONTH_BOUNDS);
  const over = month.ready ? overFullWords(month.look.slots.length) : undefined;
  return (
    <>
      {near !== undefined && <p role="status">{near}</p>}
      {over !== undefined && <p role="status">{over}</p>}
      {month.closeCode !== null && month.closeSentence !== null && (
        <ClosedNotice session={session} code={month.closeCode} sentence={month.closeSentence} />
      )}
      <NoLiveNotice sentence={month.noLive} />
    </>
  );
}
