"use client";
/** What is proposed for the open plate, and what was taken for it. */
import { useEffect, useRef } from "react";
import { standingFor, takenLast } from "#app/_session/proposals.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import type { ProposalView as Proposal } from "#lib/protocol/messages.ts";
import { ProposalView } from "./proposal-view.tsx";
import styles from "./propose.module.css";
import { TAKE } from "./propose-words.ts";
import { isTakenHere } from "./taken-here.ts";

interface PlateProposalsProps {
  readonly session: PlanSession;
  /** The item, or the heading of a block. */
  readonly itemId: string;
}

export function PlateProposals({ session, itemId }: PlateProposalsProps) {
  const snap = useSnapshot(session);
  const standing = standingFor(snap, itemId);
  const taken = takenLast(snap, itemId);
  return (
    <div className={styles.onPlate}>
      {standing.map((proposal) => (
        <ProposalView key={proposal.id} session={session} proposal={proposal} />
      ))}
      {taken && <TakenSign key={taken.id} session={session} proposal={taken} />}
    </div>
  );
}

/** Stays for as long as the document has the mark of it. Whoever took it just now can undo it here. */
function TakenSign({ session, proposal }: { readonly session: PlanSession; readonly proposal: Proposal }) {
  const { canUndo } = useSnapshot(session);
  const sign = useRef<HTMLParagraphElement>(null);
  const mine = isTakenHere(proposal.id);
  useEffect(() => {
    // The button that was pressed is gone with the proposal.
    if (mine && (document.activeElement === document.body || document.activeElement === null)) sign.current?.focus();
  }, [mine]);
  return (
    <p ref={sign} tabIndex={-1} className={styles.taken}>
      {TAKE.sign(proposal.byName, proposal.endedAt ?? proposal.at)}
      {mine && canUndo && (
        <button type="button" className="act" onClick={() => session.undo()}>
          {TAKE.undo}
        </button>
      )}
    </p>
  );
}
