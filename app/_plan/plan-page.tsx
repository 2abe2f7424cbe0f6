"use client";
/** The plan page: band, rail, margin and panel, put together; which of them are open; and the page-wide keys. */
import { useCallback, useEffect, useRef, useState } from "react";
import { FitButton } from "#app/_fit/fit-button.tsx";
import { showSlip } from "#app/_margin/show-slip.ts";
import { StateActs } from "#app/_margin/state-acts.tsx";
import { TALK_PART } from "#app/_rate/talk-part.tsx";
import { REHEARSALS_HASH, RehearsalActs } from "#app/_rehearsal/rehearsal-acts.tsx";
import { Corner } from "#app/_shell/corner.tsx";
import { PageKeys } from "#app/_shell/key-help.tsx";
import { LatePart, useLateParts } from "#app/_shell/late-part.tsx";
import { NotUndoneNotice } from "#app/_shell/not-undone-notice.tsx";
import { OvertakenNotice } from "#app/_shell/overtaken-notice.tsx";
import { useUndoKeys } from "#app/_shell/use-undo-keys.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { AddDialog } from "./add-dialog.tsx";
import { Band } from "./band/band.tsx";
import { LATE, LATE_PARTS } from "./late-parts.ts";
import { Middle } from "./middle.tsx";
import { nextFinding } from "./next-finding.ts";
import { Notices } from "./notices.tsx";
import { Opening } from "./opening.tsx";
import { Panel } from "./panel/panel.tsx";
import { PLAN_KEYS } from "./plan-keys.ts";
import styles from "./plan-page.module.css";
import type { PlanSession } from "./session.ts";
import type { PlanPageProps } from "./session-types.ts";
import { TakenOutNotices } from "./taken-out/notices.tsx";
import { useHeight } from "./use-height.ts";
import { useMedia } from "./use-media.ts";
import { type PlanView, usePlanView } from "./use-plan-view.ts";
import { usePlanSession, useSnapshot, useSnapshotOnce } from "./use-session.ts";

export function PlanPage(props: PlanPageProps) {
  const session = usePlanSession(props);
  const snap = useSnapshotOnce(session);
  if (session && snap?.ready) return <OpenedPlan {...props} session={session} />;
  return (
    <Opening {...props} barred={snap !== null && (snap.noLive !== null || snap.closeCode !== null)}>
      {session && snap && <Notices session={session} snap={snap} />}
    </Opening>
  );
}

const UNDER = { rail: "rail", "whole-class": "lanes", "read-through": "read-through" } as const;
type Dialog = "add" | "paste" | "fit" | "order" | "rehearsals" | "marks" | null;
const NOTHING = () => undefined;
const WIDE = "(min-width: 1180px)";
const PHONE = "(max-width: 759px)";

function OpenedPlan(props: PlanPageProps & { session: PlanSession }) {
  const { session } = props;
  const snap = useSnapshot(session);
  const wide = useMedia(WIDE);
  const phone = useMedia(PHONE);
  const [dialog, setDialog] = useState<Dialog>(() => (location.hash === REHEARSALS_HASH ? "rehearsals" : null));
  const [sheet, setSheet] = useState(false);
  const panel = useRef<HTMLElement>(null);
  const [band, bandHeight] = useHeight<HTMLElement>();
  const { title } = snap.plan;
  useEffect(() => {
    document.title = `${title.trim() || "Plan without a title"} · Springline`;
  }, [title]);
  useUndoKeys(session);
  useLateParts(LATE_PARTS);
  const [view, openView] = usePlanView();
  const alone = view !== "rail";
  const setView = (next: PlanView) => {
    setSheet(false);
    openView(next);
  };
  useFocusKept(view);

  const openPanel = useCallback(() => {
    setSheet(true);
    requestAnimationFrame(() => firstField(panel.current)?.focus());
  }, []);
  const closeSheet = () => {
    setSheet(false);
    requestAnimationFrame(() => focusMiddle(session.getSnapshot().selectedId));
  };
  const shutPanel = () => {
    session.select(null);
    setSheet(false);
    requestAnimationFrame(() => focusMiddle(null));
  };
  const lastFound = useRef<Finding | null>(null);
  /** Where there is no margin the finding stands among the fields of its item: on a phone the sheet opens for it. */
  const goToFinding = (level: FindingLevel) => {
    const found = nextFinding(snap, level, lastFound.current);
    lastFound.current = found ?? null;
    session.select(found?.items[0] ?? null);
    if (!found) return;
    if (phone || found.items.length === 0) setSheet(true);
    // The sheet is drawn in the first frame, what it holds stands still in the second.
    requestAnimationFrame(() => requestAnimationFrame(() => showSlip(found, phone)));
  };
  const openAdd = useCallback(() => session.canWrite && setDialog("add"), [session]);
  const openPaste = useCallback(() => session.canWrite && setDialog("paste"), [session]);
  const openOrder = useCallback(() => session.canWrite && setDialog("order"), [session]);
  const goFromDialog = (id: string | null) => {
    session.select(id);
    if (phone || id === null) openPanel();
    else requestAnimationFrame(() => focusMiddle(id));
  };
  const close = () => setDialog(null);
  const closeAdd = (added: boolean) => {
    setDialog(null);
    if (!added || !phone) requestAnimationFrame(() => focusMiddle(session.getSnapshot().selectedId));
  };

  const panelOpen = phone ? sheet : !alone || sheet || snap.selectedId !== null;

  return (
    <main className={styles.page} data-view={view} style={{ "--band": `${phone ? 0 : bandHeight}px` }}>
      <Band
        ref={band}
        session={session}
        snap={snap}
        title={title}
        roomName={session.studio.roomName}
        acts={
          <>
            <FitButton session={session} onOpen={() => setDialog("fit")} />
            <RehearsalActs session={session} onOpen={() => setDialog("rehearsals")} />
            <StateActs session={session} me={session.me} />
          </>
        }
        onTalk={() => {
          session.select(null);
          setSheet(true);
          requestAnimationFrame(() => document.getElementById(TALK_PART)?.focus());
        }}
        onFinding={goToFinding}
      />
      <Notices session={session} snap={snap} />
      <div className={styles.columns} data-alone={!panelOpen || undefined}>
        <Middle
          {...{ session, snap, wide, openAdd, openPaste, openOrder, openPanel, view, setView, panelOpen }}
          inert={phone && sheet}
          openMarks={() => setDialog("marks")}
          openClass={() => {
            session.select(null);
            openPanel();
          }}
          onPick={(id) => {
            session.select(id);
            if (phone) setSheet(true);
          }}
          onShut={shutPanel}
        />
        {panelOpen && (
          <Panel
            ref={panel}
            {...{ session, snap, onAdd: openAdd, onOrder: openOrder, sheet: phone, wide: wide && !alone }}
            under={UNDER[view]}
            onClose={closeSheet}
            {...(alone && !phone ? { onShut: shutPanel } : {})}
          />
        )}
      </div>
      <Corner>
        <TakenOutNotices session={session} snap={snap} />
        <OvertakenNotice overtaken={snap.overtaken} onClose={() => session.closeOvertaken()} />
      </Corner>
      <NotUndoneNotice sentence={snap.notUndone} />
      <p className="visually-hidden" role="status" aria-live="polite">
        {snap.said}
      </p>
      {dialog === "add" && <AddDialog session={session} onClose={closeAdd} />}
      {dialog === "paste" && <LatePart part={LATE.paste} props={{ session, onClose: closeAdd }} />}
      {dialog === "fit" && <LatePart part={LATE.fit} props={{ session, onClosed: close, onGo: goFromDialog }} />}
      {dialog === "order" && (
        <LatePart part={LATE.order} props={{ session, itemId: snap.selectedId, onClosed: close }} />
      )}
      {dialog === "rehearsals" && <LatePart part={LATE.rehearsals} props={{ session, onClosed: close }} />}
      <PageKeys of={PLAN_KEYS} />
      {dialog === "marks" && <LatePart part={LATE.marks} props={{ lanes: view === "whole-class", onClose: close }} />}
    </main>
  );
}

function firstField(panel: HTMLElement | null): HTMLElement | null {
  return panel?.querySelector<HTMLElement>("[data-first]") ?? panel;
}

/** The chosen item on the rail, or the cell of the whole class or the line of the read-through that takes the keyboard. */
function focusMiddle(id: string | null): void {
  const cell = document.querySelector<HTMLElement>(':is([role="grid"], [data-reading]) [tabindex="0"]');
  if (cell) cell.focus();
  else if (id !== null) document.getElementById(`rail-${id}`)?.focus();
}

/** A view changed by a key of the other one: the keyboard goes on where it was, as soon as the view is here. */
function useFocusKept(view: PlanView): void {
  const before = useRef(view);
  useEffect(() => {
    if (before.current === view) return;
    before.current = view;
    if (document.activeElement !== document.body) return;
    const chosen = document.querySelector<HTMLElement>('[role="listbox"] [tabindex="0"]');
    let left = false;
    const goOn = () => {
      if (!left && document.activeElement === document.body) focusMiddle(chosen?.dataset.item ?? null);
    };
    whenViewIsHere(view, () => requestAnimationFrame(goOn));
    return () => {
      left = true;
    };
  }, [view]);
}

/** Runs `then` at once when the view is here, or when its late part has come. */
function whenViewIsHere(view: PlanView, then: () => void): void {
  const part = view === "rail" ? null : LATE[view === "whole-class" ? "wholeClass" : "readThrough"];
  if (!part || part.here !== null) then();
  // The page draws the part in a step of its own after it has come. What does not come says so itself.
  else part.fetch().then(() => requestAnimationFrame(then), NOTHING);
}
