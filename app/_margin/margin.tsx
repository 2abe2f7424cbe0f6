"use client";
/**
 * The margin: findings and threads as slips at the height of what they are about. Given the rail's layout they are placed
 * beside it and tied to it by lines; without one (a narrow screen, an item's own sheet) they are a plain list.
 */
import { useMemo, useState } from "react";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { countWords, type Slip, slipsOf } from "#lib/margin/slips.ts";
import type { RailLayout } from "#lib/rail/layout.ts";
import { FindingSlip } from "./finding-slip.tsx";
import styles from "./margin.module.css";
import { NOTE_WORDS, NOTHING_HERE } from "./margin-words.ts";
import { NewThread } from "./new-thread.tsx";
import { SlipTies } from "./slip-ties.tsx";
import { ThreadSlip } from "./thread-slip.tsx";
import { type SlipPlaces, useSlipPlaces } from "./use-slip-places.ts";

/** The usual height of a whole slip, in pixels: when all of them would not fit beside the class, most are shortened. */
const USUAL_SLIP_PX = 104;

interface MarginProps {
  readonly session: PlanSession;
  /** Where everything is on the rail; null for a plain list. The margin's top must be the rail's top. */
  readonly placements: RailLayout | null;
  /** Only what is about this item. */
  readonly itemId?: string;
}

export function Margin({ session, placements, itemId }: MarginProps) {
  const snap = useSnapshot(session);
  const [showSettled, setShowSettled] = useState(false);
  const { plan, findings, threads } = snap;
  const slips = useMemo(
    () => slipsOf({ plan, findings, threads, showSettled, ...(itemId === undefined ? {} : { only: itemId }) }),
    [plan, findings, threads, showSettled, itemId],
  );
  const settled = threads.filter((t) => t.settled && (itemId === undefined || aboutItem(t.anchor, itemId))).length;
  const placed = useSlipPlaces(slips, placements, snap.selectedId);
  const beside = placements !== null;
  return (
    <section
      className={beside ? styles.beside : styles.list}
      style={beside ? { minHeight: placed.height } : undefined}
      aria-label={itemId === undefined ? "Findings and threads" : "Findings and threads of this item"}
    >
      <div ref={placed.measureHead} className={styles.head}>
        <Head
          session={session}
          itemId={itemId}
          slips={slips}
          settled={{ count: settled, shown: showSettled, show: setShowSettled }}
        />
      </div>
      {beside && <SlipTies {...placed} slips={slips} layout={placements} selectedId={snap.selectedId} />}
      <Slips session={session} slips={slips} placed={placed} layout={placements} />
      {slips.length === 0 && !beside && <p className="quiet small">{NOTHING_HERE}</p>}
    </section>
  );
}

interface SlipsProps {
  readonly session: PlanSession;
  readonly slips: readonly Slip[];
  readonly placed: SlipPlaces;
  readonly layout: RailLayout | null;
}

function Slips({ session, slips, placed: { places, headHeight, measure }, layout }: SlipsProps) {
  const { selectedId } = useSnapshot(session);
  const beside = layout !== null;
  const crowded = beside && slips.length * USUAL_SLIP_PX > layout.height;
  return (
    <ul className={styles.slips} aria-label="Findings and threads">
      {slips.map((slip) => (
        <li
          key={slip.id}
          ref={measure(slip.id)}
          className={styles.slipPlace}
          style={beside ? { top: places.get(slip.id) ?? headHeight } : undefined}
          data-about={slip.about ?? undefined}
        >
          <SlipBody
            session={session}
            slip={slip}
            selected={beside && slip.about !== null && slip.about === selectedId}
            crowded={crowded}
          />
        </li>
      ))}
    </ul>
  );
}

interface HeadProps {
  readonly session: PlanSession;
  readonly itemId: string | undefined;
  readonly slips: readonly Slip[];
  readonly settled: { readonly count: number; readonly shown: boolean; readonly show: (on: boolean) => void };
}

/** The note of the last step, how many findings and threads there are, and a way to comment. */
function Head({ session, itemId, slips, settled }: HeadProps) {
  const { findings, threads, rights, selectedId } = useSnapshot(session);
  return (
    <>
      {itemId === undefined && <StateNote session={session} />}
      <p className={styles.counts}>{itemId === undefined ? countWords(findings, threads) : countsOf(slips)}</p>
      {rights.comments && <NewThread session={session} itemId={itemId ?? selectedId} />}
      {settled.count > 0 && (
        <button
          type="button"
          className="text-button text-button-low small"
          aria-expanded={settled.shown}
          onClick={() => settled.show(!settled.shown)}
        >
          {settled.shown ? "Hide" : "Show"} {settled.count} settled
        </button>
      )}
    </>
  );
}

/** The note that came with the last step: the authors work from it. */
function StateNote({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const words = NOTE_WORDS[state.state];
  if (words === undefined || state.note === null || state.note === "") return null;
  return (
    <p className={styles.stateNote}>
      <strong>{words}:</strong> {state.note}
    </p>
  );
}

interface BodyProps {
  readonly session: PlanSession;
  readonly slip: Slip;
  readonly selected: boolean;
  readonly crowded: boolean;
}

/** In a crowded margin only the slips of the selected item are shown in full. */
function SlipBody({ session, slip, selected, crowded }: BodyProps) {
  const short = crowded && !selected;
  return slip.kind === "finding" ? (
    <FindingSlip session={session} finding={slip.finding} selected={selected} short={short} />
  ) : (
    <ThreadSlip session={session} thread={slip.thread} selected={selected} short={short} />
  );
}

const aboutItem = (anchor: { kind: string; itemId?: string }, itemId: string): boolean => anchor.itemId === itemId;

function countsOf(slips: readonly Slip[]): string {
  const findings = slips.flatMap((slip) => (slip.kind === "finding" ? [slip.finding] : []));
  return countWords(
    findings,
    slips.flatMap((slip) => (slip.kind === "thread" ? [slip.thread] : [])),
  );
}
