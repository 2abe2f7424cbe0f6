/** Everything that happened in one round, in order of time. Pure. */
import { shareWords, type TakenInPart, takenInPart } from "#lib/proposal/part-words.ts";
import type { ProposalView } from "#lib/protocol/messages.ts";
import type { MomentHead, RoundView } from "#lib/rounds/rounds.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";

export type RoundStep =
  | { readonly kind: "moment"; readonly at: number; readonly moment: MomentHead }
  | { readonly kind: "said"; readonly at: number; readonly words: string };

type Known = Pick<SessionSnapshot, "proposals" | "taken" | "plan">;

/** `until`: when the next round was offered; null for the last one. What was taken after a return belongs to the round before. */
export function roundSteps(round: RoundView, until: number | null, known: Known): RoundStep[] {
  const { moments, readerName, readSince, offeredAt, offeredByName } = round;
  const said = (at: number, words: string): RoundStep => ({ kind: "said", at, words });
  const isIn = ({ endedAt }: ProposalView) =>
    endedAt !== null && endedAt >= offeredAt && (until === null || endedAt < until);
  return [
    ...(moments.length === 0 ? [said(offeredAt, `Offered for reading by ${offeredByName}`)] : []),
    ...moments.map((moment): RoundStep => ({ kind: "moment", at: moment.at, moment })),
    ...(readerName !== null && readSince !== null ? [said(readSince, `Taken up by ${readerName}`)] : []),
    ...takenNow(known).flatMap(({ proposal, part }) =>
      isIn(proposal) ? [said(proposal.endedAt ?? proposal.at, takenStepWords(proposal, part))] : [],
    ),
  ].sort((a, b) => a.at - b.at);
}

/** Those that were taken and not undone. */
const takenNow = ({ proposals, taken, plan }: Known) =>
  proposals.flatMap((proposal) => {
    const mark = proposal.state === "taken" ? taken.get(proposal.id) : undefined;
    return mark ? [{ proposal, part: takenInPart(plan, proposal.parts, mark.parts) }] : [];
  });

const takenStepWords = ({ endedByName, byName }: ProposalView, part: TakenInPart | null): string =>
  part
    ? `${shareWords(part)} of a proposal by ${byName} taken by ${endedByName}: ${part.named.join(", ")}`
    : `Proposal by ${byName} taken by ${endedByName}`;
