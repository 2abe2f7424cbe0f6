"use client";
import { useEffect, useState } from "react";
import { Dialog } from "#app/_parts/dialog.tsx";
import { send } from "#app/_parts/send.ts";
import { placedName } from "#app/_session/placed-name.ts";
import { standingProposals } from "#app/_session/proposals.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
/** All proposals of the plan that wait for an answer, each to be opened here, and those that were answered. */
import { shortDateOf } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { plural, sentenceCase } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { type TakenInPart, takenInPart } from "#lib/proposal/part-words.ts";
import type { ProposalView as Proposal } from "#lib/protocol/messages.ts";
import { ProposalBeside } from "./proposal-beside.tsx";
import styles from "./propose.module.css";
import { LIST, PROPOSE } from "./propose-words.ts";

interface ProposalsDialogProps {
  readonly session: PlanSession;
  readonly onClosed: () => void;
  /** To the plate of an item. */
  readonly onGo: (itemId: string) => void;
}

export function ProposalsDialog({ session, onClosed, onGo }: ProposalsDialogProps) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const standing = standingProposals(snap);
  return (
    <Dialog title={LIST.title} size="sheet" onClose={onClosed}>
      {standing.length === 0 && <p>{LIST.none}</p>}
      <ul className={styles.list}>
        {standing.map((proposal) => (
          <li key={proposal.id}>
            <Standing {...{ session, plan, proposal, onGo }} />
          </li>
        ))}
      </ul>
      <Answered session={session} />
    </Dialog>
  );
}

interface StandingProps extends Pick<ProposalsDialogProps, "session" | "onGo"> {
  readonly plan: Plan;
  readonly proposal: Proposal;
}

/** Its effect is worked out only while it is open. */
function Standing({ session, plan, proposal, onGo }: StandingProps) {
  const [open, setOpen] = useState(false);
  const { itemId } = proposal;
  const item = itemId === null ? undefined : itemById(plan, itemId);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <b>{placeWords(plan, itemId)}</b> {plural(proposal.parts.length, "part")}, {proposal.byName},{" "}
        {shortDateOf(proposal.at, session.formats)}
      </summary>
      {open && (
        <>
          {item && (
            <button type="button" className="text-button" onClick={() => onGo(item.id)}>
              {LIST.go}
            </button>
          )}
          <ProposalBeside session={session} proposal={proposal} />
        </>
      )}
    </details>
  );
}

function placeWords(plan: Plan, itemId: string | null): string {
  if (itemId === null) return PROPOSE.orderTitle(PROPOSE.firstBlock);
  const item = itemById(plan, itemId);
  return item ? sentenceCase(placedName(plan, item)) : LIST.gone;
}

/** Asked for anew whenever one more has been answered. */
function Answered({ session }: { readonly session: PlanSession }) {
  const { plan, proposals, taken } = useSnapshot(session);
  const [all, setAll] = useState<readonly Proposal[] | string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: news of a proposal says that there is more to read
  useEffect(() => {
    let ended = false;
    void send<{ proposals: readonly Proposal[] }>("GET", `/api/plans/${session.planId}/proposals`).then((sent) => {
      if (!ended) setAll(sent.ok ? sent.value.proposals : sent.message);
    });
    return () => {
      ended = true;
    };
  }, [session, proposals]);
  if (all === null) return <p className="quiet small">{LIST.loading}</p>;
  if (typeof all === "string") return <p className="problem">{all}</p>;
  const answered = all.filter(({ id, state }) => state !== "open" && (state !== "taken" || taken.has(id)));
  if (answered.length === 0) return null;
  return (
    <section>
      <h3>{LIST.answered}</h3>
      <ul className={styles.answered}>
        {answered.toReversed().map((proposal) => (
          <li key={proposal.id}>
            <b>{placeWords(plan, proposal.itemId)}</b>, {proposal.byName}:{" "}
            {answerWords(
              proposal,
              takenInPart(plan, proposal.parts, taken.get(proposal.id)?.parts ?? []),
              session.formats,
            )}
            {proposal.word && <q>{proposal.word}</q>}
          </li>
        ))}
      </ul>
    </section>
  );
}

function answerWords({ state, endedByName, endedAt, at }: Proposal, part: TakenInPart | null, f: Formats): string {
  const [by, when] = [endedByName ?? "", shortDateOf(endedAt ?? at, f)];
  if (state === "taken") return LIST.taken(by, when, part);
  return state === "declined" ? LIST.declined(by, when) : LIST.withdrawn(when);
}
