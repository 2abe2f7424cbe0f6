"use client";
/** The plan itself in the view that is open: on its rail, as the whole class, as one text. */
import { useMemo } from "react";
import { DraftBar } from "#app/_draft/draft-bar.tsx";
import { TwiceBar } from "#app/_draft/twice-bar.tsx";
import { useFirstDraft } from "#app/_draft/use-first-draft.ts";
import { StateNote } from "#app/_margin/state-note.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import { Empty } from "#app/_rail/empty.tsx";
import { marksOf } from "#app/_rail/marks.ts";
import { Rail } from "#app/_rail/rail.tsx";
import type { RailScale } from "#app/_rail/use-scale.ts";
import { lateChangesBar } from "#app/_rounds/late-rounds.ts";
import { useAccepted } from "#app/_session/accepted-now.ts";
import { hasRounds, useChangesShown } from "#app/_session/changes-shown.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { isMoveItem, itemById } from "#lib/plan/lookup.ts";
import { LATE, LATE_VIEW } from "./late-parts.ts";
import { OpenPlate } from "./panel/panel.tsx";
import styles from "./plan-page.module.css";
import { PlanTools } from "./plan-tools.tsx";
import type { Page } from "./use-page.ts";

interface MiddleProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly page: Page;
  readonly scale: RailScale;
}

export function Middle({ session, snap, page, scale }: MiddleProps) {
  const { view } = page;
  const tools = <PlanTools session={session} snap={snap} page={page} />;
  const inert = page.asSheet && page.panelShows !== null;
  if (view === "rail") {
    return (
      <div className={styles.middle} inert={inert}>
        {tools}
        <StateNote session={session} />
        {hasRounds(snap) && (
          <div className={styles.changesBar}>
            <LatePart part={lateChangesBar} props={{ session }} meanwhile={null} />
          </div>
        )}
        <DraftBar session={session} snap={snap} />
        <TwiceBar session={session} snap={snap} />
        <OnRail {...{ session, snap, page, scale }} />
      </div>
    );
  }
  return (
    <div className={styles.alone} inert={inert}>
      <div className={styles.offPaper}>
        {tools}
        {!snap.plan.items.some(isMoveItem) && <Empty />}
      </div>
      <LatePart part={LATE[LATE_VIEW[view]]} props={{ session, snap }} />
    </div>
  );
}

function OnRail({ session, snap, page, scale }: MiddleProps) {
  const draft = useFirstDraft(session, snap);
  const { waiting } = useAccepted(snap);
  const marks = useMemo(() => marksOf(snap, waiting, draft), [snap, waiting, draft]);
  const changes = useChangesShown(session.changes);
  const hasMoves = snap.plan.items.some(isMoveItem);
  const item = page.openId === null ? undefined : itemById(snap.plan, page.openId);
  const open = item && {
    id: item.id,
    plate: <OpenPlate key={item.id} ref={page.panel} {...{ session, snap, item }} />,
  };
  return (
    <>
      {!hasMoves && <Empty />}
      <Rail {...{ session, snap, marks, draft, open }} changes={changes.marks} scale={scale.pixels} />
      {hasMoves && session.canWrite && <AddLast session={session} lastId={snap.plan.items.at(-1)?.id ?? null} />}
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
