"use client";
/** The middle of the plan page: the tools, and under them the rail, on a wide screen with its margin, the whole class, or its words. */
import { useMemo, useState } from "react";
import { Margin } from "#app/_margin/margin.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import { isMoveItem, itemById } from "#lib/plan/lookup.ts";
import type { RailLayout } from "#lib/rail/layout.ts";
import { Empty } from "../_rail/empty.tsx";
import { marksOf } from "../_rail/marks.ts";
import { Rail } from "../_rail/rail.tsx";
import { useScale } from "../_rail/use-scale.ts";
import type { PlanSession } from "../_session/session.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import { LATE } from "./late-parts.ts";
import styles from "./plan-page.module.css";
import { RailTools } from "./plan-tools.tsx";
import type { PlanView } from "./use-plan-view.ts";

export interface MiddleProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly wide: boolean;
  readonly inert: boolean;
  readonly view: PlanView;
  readonly setView: (view: PlanView) => void;
  readonly panelOpen: boolean;
  readonly openAdd: () => void;
  readonly openPaste: () => void;
  readonly openOrder: () => void;
  readonly openPanel: () => void;
  readonly openMarks: () => void;
  readonly openClass: () => void;
  readonly onPick: (id: string) => void;
  /** Nothing is to be chosen any more. */
  readonly onShut: () => void;
}

export function Middle(props: MiddleProps) {
  const { session, snap, openAdd, openPaste, view } = props;
  const { scale, step } = useScale(session.planId);
  const hasMoves = snap.plan.items.some(isMoveItem);
  const classOpen = props.panelOpen && itemById(snap.plan, snap.selectedId ?? "") === undefined;
  const tools = <RailTools {...props} scale={scale} step={step} classOpen={classOpen} />;
  const empty = !hasMoves && <Empty session={session} onAdd={openAdd} onPaste={openPaste} />;
  if (view !== "rail") {
    return (
      <div className={styles.alone} inert={props.inert}>
        <div className={styles.offPaper}>
          {tools}
          {empty}
        </div>
        {view === "whole-class" ? <Lanes {...props} /> : <Words {...props} />}
      </div>
    );
  }
  return <RailAndMargin {...props} scale={scale} tools={tools} empty={empty} hasMoves={hasMoves} />;
}

/** The whole class. What is pressed is chosen, and the panel beside it opens. */
function Lanes({ session, snap, onPick, onShut, openPanel, openClass, setView }: MiddleProps) {
  const go = (item: string | null, open: boolean) => {
    if (item === null) openClass();
    else onPick(item);
    if (open && item !== null) openPanel();
  };
  return (
    <LatePart
      part={LATE.wholeClass}
      props={{
        session,
        snap,
        roomName: session.studio.roomName,
        onGo: go,
        onRail: () => setView("rail"),
        onRead: () => setView("read-through"),
        onShut,
      }}
    />
  );
}

function Words({ session, snap, onPick, setView }: MiddleProps) {
  return (
    <LatePart
      part={LATE.readThrough}
      props={{
        session,
        snap,
        onPick,
        onRail: () => setView("rail"),
        onWhole: () => setView("whole-class"),
      }}
    />
  );
}

interface RailPartProps extends MiddleProps {
  readonly scale: number;
  readonly tools: React.ReactNode;
  readonly empty: React.ReactNode;
  readonly hasMoves: boolean;
}

/** The rail, and on a wide screen the margin beside it. */
function RailAndMargin(props: RailPartProps) {
  const { session, snap, wide, scale, openAdd, openPanel, setView } = props;
  const [layout, setLayout] = useState<RailLayout | null>(null);
  const marks = useMemo(() => (wide ? NO_MARKS : marksOf(snap)), [wide, snap]);
  const acts = useMemo(
    () => ({
      openAdd,
      openPanel,
      openWhole: () => setView("whole-class"),
      openRead: () => setView("read-through"),
    }),
    [openAdd, openPanel, setView],
  );
  return (
    <div className={styles.middle} inert={props.inert}>
      <div className={styles.tools}>{props.tools}</div>
      <div className={styles.railColumn}>
        {props.empty}
        <Rail {...{ session, snap, scale, marks, acts }} onPick={props.onPick} onLayout={setLayout} />
        {props.hasMoves && session.canWrite && (
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
