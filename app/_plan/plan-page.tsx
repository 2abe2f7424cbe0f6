"use client";
/** The plan page: band, rail, margin and panel, put together; which of them are open; and the page-wide keys. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { Margin } from "#app/_margin/margin.tsx";
import { StateActs } from "#app/_margin/state-acts.tsx";
import { isMoveItem, itemById } from "#lib/plan/lookup.ts";
import type { RailLayout } from "#lib/rail/layout.ts";
import { AddDialog } from "./add-dialog.tsx";
import { Band } from "./band/band.tsx";
import { ClosedNotice } from "./closed-notice.tsx";
import { KeysHelp } from "./keys-help.tsx";
import { nextFinding } from "./next-finding.ts";
import { Panel } from "./panel/panel.tsx";
import styles from "./plan-page.module.css";
import { Empty } from "./rail/empty.tsx";
import { marksOf } from "./rail/marks.ts";
import { Rail } from "./rail/rail.tsx";
import { RailTools } from "./rail/rail-tools.tsx";
import { useScale } from "./rail/use-scale.ts";
import type { PlanSession } from "./session.ts";
import type { PlanPageProps, SessionSnapshot } from "./session-types.ts";
import { useHeight } from "./use-height.ts";
import { useMedia } from "./use-media.ts";
import { usePageKeys } from "./use-page-keys.ts";
import { usePlanSession, useSnapshot } from "./use-session.ts";

export function PlanPage(props: PlanPageProps) {
  const session = usePlanSession(props);
  if (session === null) return <Opening />;
  return <OpenedPlan {...props} session={session} />;
}

function Opening() {
  return (
    <main className={styles.opening}>
      <p role="status">Opening the plan…</p>
    </main>
  );
}

type Dialog = "add" | "keys" | null;
const WIDE = "(min-width: 1180px)";
const PHONE = "(max-width: 759px)";

function OpenedPlan(props: PlanPageProps & { session: PlanSession }) {
  const { session } = props;
  const snap = useSnapshot(session);
  const wide = useMedia(WIDE);
  const phone = useMedia(PHONE);
  const [dialog, setDialog] = useState<Dialog>(null);
  const [sheet, setSheet] = useState(false);
  const panel = useRef<HTMLElement>(null);
  const [band, bandHeight] = useHeight<HTMLElement>();
  const title = snap.ready ? snap.plan.title : props.title;
  useEffect(() => {
    document.title = `${title.trim() || "Plan without a title"} · Springline`;
  }, [title]);
  usePageKeys(session);

  const openPanel = useCallback(() => {
    setSheet(true);
    requestAnimationFrame(() => firstField(panel.current)?.focus());
  }, []);
  const closeSheet = () => {
    setSheet(false);
    requestAnimationFrame(() => focusRail(session.getSnapshot().selectedId));
  };
  const openAdd = useCallback(() => session.canWrite && setDialog("add"), [session]);
  const closeAdd = (added: boolean) => {
    setDialog(null);
    if (!added || !phone) requestAnimationFrame(() => focusRail(session.getSnapshot().selectedId));
  };

  return (
    <main className={styles.page} style={{ "--band": `${phone ? 0 : bandHeight}px` }}>
      <Band
        ref={band}
        session={session}
        snap={snap}
        title={title}
        roomName={session.studio.roomName}
        acts={<StateActs session={session} me={session.me} />}
        onFinding={(level) => {
          const found = nextFinding(snap, level);
          session.select(found?.items[0] ?? null);
          if (found && found.items.length === 0) setSheet(true);
        }}
      />
      <Notices session={session} snap={snap} />
      <div className={styles.columns} data-sheet={(phone && sheet) || undefined}>
        <Middle
          {...{ session, snap, wide, openAdd, openPanel }}
          inert={phone && sheet}
          openHelp={() => setDialog("keys")}
          openClass={() => {
            session.select(null);
            openPanel();
          }}
          onPick={(id) => {
            session.select(id);
            if (phone) setSheet(true);
          }}
        />
        {(!phone || sheet) && (
          <Panel ref={panel} {...{ session, snap, onAdd: openAdd, sheet: phone, wide }} onClose={closeSheet} />
        )}
      </div>
      <p className="visually-hidden" role="status" aria-live="polite">
        {snap.said}
      </p>
      {dialog === "add" && <AddDialog session={session} onClose={closeAdd} />}
      {dialog === "keys" && <KeysHelp onClose={() => setDialog(null)} />}
    </main>
  );
}

function Notices({ session, snap }: { session: PlanSession; snap: SessionSnapshot }) {
  return (
    <>
      {snap.closeCode !== null && snap.closeSentence !== null && (
        <ClosedNotice session={session} code={snap.closeCode} sentence={snap.closeSentence} />
      )}
      {snap.copy === "lost" && (
        <p className={styles.readAlong} role="alert">
          This device keeps no copy of the plan any more: its storage was cleared. What you type goes to the server
          while you are connected; reload the page to have a copy again.
        </p>
      )}
      {snap.ready && !snap.rights.writes && (
        <p className={styles.readAlong}>
          You read along: this plan is not yours to write in
          {snap.rights.comments ? ", but you may comment on anything." : "."}
        </p>
      )}
    </>
  );
}

interface MiddleProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly wide: boolean;
  readonly inert: boolean;
  readonly openAdd: () => void;
  readonly openPanel: () => void;
  readonly openHelp: () => void;
  readonly openClass: () => void;
  readonly onPick: (id: string) => void;
}

/** The rail, and on a wide screen the margin beside it. */
function Middle(props: MiddleProps) {
  const { session, snap, wide, openAdd, openPanel, openHelp } = props;
  const [layout, setLayout] = useState<RailLayout | null>(null);
  const { scale, step } = useScale(session.planId);
  const marks = useMemo(() => (wide ? NO_MARKS : marksOf(snap)), [wide, snap]);
  const acts = useMemo(() => ({ openAdd, openPanel, openHelp }), [openAdd, openPanel, openHelp]);
  if (!snap.ready) return <p className={styles.opening}>Opening the plan…</p>;
  const hasMoves = snap.plan.items.some(isMoveItem);
  return (
    <div className={styles.middle} inert={props.inert}>
      <div className={styles.railColumn}>
        <RailTools
          {...{ session, scale, step, openAdd, openHelp }}
          openClass={props.openClass}
          classOpen={itemById(snap.plan, snap.selectedId ?? "") === undefined}
        />
        {!hasMoves && <Empty session={session} onAdd={openAdd} />}
        <Rail {...{ session, snap, scale, marks, acts }} onPick={props.onPick} onLayout={setLayout} />
        {hasMoves && session.canWrite && (
          <button
            type="button"
            className={`button ${styles.addLast}`}
            onClick={() => {
              session.select(snap.plan.items.at(-1)?.id ?? null);
              openAdd();
            }}
          >
            Add at the end
          </button>
        )}
      </div>
      {wide && (
        <div className={styles.margin}>
          <Margin session={session} placements={layout ?? NO_LAYOUT} />
        </div>
      )}
    </div>
  );
}

const NO_MARKS: ReturnType<typeof marksOf> = new Map();
const NO_LAYOUT: RailLayout = { segments: [], height: 0, lengthY: 0 };

function firstField(panel: HTMLElement | null): HTMLElement | null {
  return panel?.querySelector<HTMLElement>("[data-first]") ?? panel;
}

function focusRail(id: string | null): void {
  if (id !== null) document.getElementById(`rail-${id}`)?.focus();
}
