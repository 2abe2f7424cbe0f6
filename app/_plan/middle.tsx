"use client";
/** The plan itself in the view that is open: on its rail, on a wide screen with the margin, as the whole class, as one text. */
import { useMemo, useState } from "react";
import { Margin } from "#app/_margin/margin.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import { Empty } from "#app/_rail/empty.tsx";
import { marksOf } from "#app/_rail/marks.ts";
import { Rail } from "#app/_rail/rail.tsx";
import { type RailScale, useScale } from "#app/_rail/use-scale.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { isMoveItem, itemById } from "#lib/plan/lookup.ts";
import type { RailLayout } from "#lib/rail/layout.ts";
import { LATE } from "./late-parts.ts";
import styles from "./plan-page.module.css";
import { PlanTools } from "./plan-tools.tsx";
import type { Page } from "./use-page.ts";

interface MiddleProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly page: Page;
  readonly panelOpen: boolean;
}

export function Middle({ session, snap, page, panelOpen }: MiddleProps) {
  const { view, wide } = page;
  const scale = useScale(session.planId);
  const classOpen = panelOpen && itemById(snap.plan, snap.selectedId ?? "") === undefined;
  const tools = <PlanTools view={view} scale={scale} classOpen={classOpen} />;
  const inert = page.phone && page.sheetOpen;
  if (view === "rail") {
    return (
      <div className={styles.middle} inert={inert}>
        <div className={styles.tools}>{tools}</div>
        <RailAndMargin {...{ session, snap, wide, scale }} />
      </div>
    );
  }
  return (
    <div className={styles.alone} inert={inert}>
      <div className={styles.offPaper}>
        {tools}
        {!snap.plan.items.some(isMoveItem) && <Empty />}
      </div>
      <LatePart part={LATE[view === "whole-class" ? "wholeClass" : "readThrough"]} props={{ session, snap }} />
    </div>
  );
}

interface RailPartProps extends Pick<MiddleProps, "session" | "snap"> {
  readonly wide: boolean;
  readonly scale: RailScale;
}

function RailAndMargin({ session, snap, wide, scale }: RailPartProps) {
  const [layout, setLayout] = useState<RailLayout | null>(null);
  const marks = useMemo(() => (wide ? NO_MARKS : marksOf(snap)), [wide, snap]);
  const hasMoves = snap.plan.items.some(isMoveItem);
  return (
    <>
      <div className={styles.railColumn}>
        {!hasMoves && <Empty />}
        <Rail {...{ session, snap, marks }} scale={scale.pixels} onLayout={setLayout} />
        {hasMoves && session.canWrite && <AddLast session={session} lastId={snap.plan.items.at(-1)?.id ?? null} />}
      </div>
      {wide && (
        <div className={styles.margin}>
          <Margin session={session} placements={layout ?? NO_LAYOUT} />
        </div>
      )}
    </>
  );
}

function AddLast({ session, lastId }: { readonly session: PlanSession; readonly lastId: string | null }) {
  const { run } = usePageActs();
  const addLast = () => {
    session.select(lastId);
    run.add();
  };
  return (
    <button type="button" className={`button ${styles.addLast}`} onClick={addLast}>
      Add at the end
    </button>
  );
}

const NO_MARKS: ReturnType<typeof marksOf> = new Map();
const NO_LAYOUT: RailLayout = { segments: [], height: 0, lengthY: 0 };
