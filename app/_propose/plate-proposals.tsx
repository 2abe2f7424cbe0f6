"use client";
import { standingFor, takenLast } from "#app/_session/proposals.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
/** What is proposed for the open plate, and what was taken for it. */
import { shortDateOf } from "#lib/formats/dates.ts";
import { takenInPart } from "#lib/proposal/part-words.ts";
import type { ProposalView as Proposal } from "#lib/protocol/messages.ts";
import { focusNear } from "./focus-near.ts";
import { ProposalBeside } from "./proposal-beside.tsx";
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
        <ProposalBeside key={proposal.id} session={session} proposal={proposal} />
      ))}
      {taken && <TakenSign key={taken.id} session={session} proposal={taken} />}
    </div>
  );
}

/** Stays for as long as the document has the mark of it. Whoever took it just now can undo it here. */
function TakenSign({ session, proposal }: { readonly session: PlanSession; readonly proposal: Proposal }) {
  const { canUndo, plan, taken } = useSnapshot(session);
  const mine = isTakenHere(proposal.id);
  const part = takenInPart(plan, proposal.parts, taken.get(proposal.id)?.parts ?? []);
  const undo = () => {
    session.undo();
    focusNear();
  };
  return (
    <p tabIndex={-1} className={styles.taken} data-taken-here={mine || undefined}>
      {TAKE.sign(proposal.byName, shortDateOf(proposal.endedAt ?? proposal.at, session.formats), part)}
      {mine && canUndo && (
        <button type="button" className="act" onClick={undo}>
          {TAKE.undo}
        </button>
      )}
    </p>
  );
}
