"use client";
/**
 * The month: weeks one under another, each day a short rail from which its classes hang, like times side by side. On a
 * phone the same days stand in one list. Everybody's changes show as they happen.
 */
import { useState } from "react";
import { ClosedNotice } from "#app/_parts/closed-notice.tsx";
import { useUndoKeys } from "#app/_parts/commands/use-undo-keys.ts";
import { Corner } from "#app/_parts/corner.tsx";
import { PageKeys } from "#app/_parts/key-help.tsx";
import { NoLiveNotice } from "#app/_parts/no-live-notice.tsx";
import { NotUndoneNotice } from "#app/_parts/not-undone-notice.tsx";
import { NothingYet } from "#app/_parts/nothing-yet.tsx";
import { OvertakenNotice } from "#app/_parts/overtaken-notice.tsx";
import { MONTH_BOUNDS, nearBounds } from "#lib/doc/bounds.ts";
import { MONTH_KEYS } from "./month-commands.ts";
import { MonthHead } from "./month-head.tsx";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot, SlotDialogSubject } from "./month-types.ts";
import { OtherMonths } from "./other-months.tsx";
import { SlotDialog } from "./slot-dialog.tsx";
import { TakenOutSlots } from "./taken-out-slots.tsx";
import { useMonth, useMonthSession } from "./use-month.ts";
import { Weeks } from "./weeks.tsx";

const OPENING = <p role="status">Opening the month…</p>;

export function MonthView(props: MonthPageProps) {
  const session = useMonthSession(props);
  return session ? <OpenMonth session={session} props={props} /> : OPENING;
}

function OpenMonth({ session, props }: { readonly session: MonthSession; readonly props: MonthPageProps }) {
  const month = useMonth(session);
  const [asked, setAsked] = useState<SlotDialogSubject>(null);
  const close = () => setAsked(null);
  useUndoKeys(session);
  return (
    <>
      <MonthHead session={session} props={props} month={month} />
      <Notices session={session} month={month} />
      {month.ready && month.slots.length === 0 && <NoClasses writes={month.writes} />}
      {month.ready && <Weeks month={month} props={props} onAsk={setAsked} />}
      {!month.ready && month.noLive === null && OPENING}
      <OtherMonths month={props.month} />
      <TakenOutSlots session={session} month={month} />
      <NotUndoneNotice sentence={month.notUndone} />
      <Corner>
        <OvertakenNotice overtaken={month.overtaken} onClose={() => session.closeOvertaken()} />
      </Corner>
      <p className="visually-hidden" role="status" aria-live="polite">
        {month.said}
      </p>
      {asked && <SlotDialog {...{ session, month, props, asked }} onClose={close} />}
      <PageKeys of={MONTH_KEYS} />
    </>
  );
}

const NoClasses = ({ writes }: { readonly writes: boolean }) => (
  <NothingYet>
    <p>
      <b>No classes in this month yet.</b>{" "}
      {writes ? "Press a day to add the first: its time, room, coach and plan." : "Coaches and leads add them here."}
    </p>
  </NothingYet>
);

/** What stands between the person and the month. */
function Notices({ session, month }: { readonly session: MonthSession; readonly month: MonthSnapshot }) {
  const near = nearBounds(session.doc, MONTH_BOUNDS);
  return (
    <>
      {near !== undefined && <p role="status">{near}</p>}
      {month.closeCode !== null && month.closeSentence !== null && (
        <ClosedNotice session={session} code={month.closeCode} sentence={month.closeSentence} />
      )}
      <NoLiveNotice sentence={month.noLive} />
    </>
  );
}
