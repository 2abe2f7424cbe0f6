/** Which findings a lead has accepted as they stand. Fetched after the page, since it hashes: until then nothing counts as accepted. */
import { useFetched } from "#app/_parts/late-part.tsx";
import type { StillAccepted } from "#lib/acceptance/accepted.ts";
import { loadLater } from "#lib/client/late.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { SessionSnapshot } from "./session-types.ts";

type Judged = Pick<SessionSnapshot, "findings" | "accepted">;
export interface AcceptedNow extends StillAccepted<AcceptanceView> {
  /** Findings that still wait for somebody: all but the accepted ones. */
  readonly waiting: readonly Finding[];
  /** Of those, the ones that were accepted with other numbers: by which acceptance. */
  readonly again: ReadonlyMap<Finding, AcceptanceView>;
}

export const lateAccepted = loadLater(() =>
  Promise.all([import("#lib/acceptance/accepted.ts"), import("#lib/acceptance/stands-again.ts")]).then(
    ([{ stillAccepted }, { standsAgain }]) => ({ stillAccepted, standsAgain }),
  ),
);

let last: { readonly of: Judged; readonly judged: boolean; readonly now: AcceptedNow } | null = null;

/** The same object for as long as findings and acceptances stay the same. */
export function acceptedNow({ findings, accepted }: Judged): AcceptedNow {
  const judge = accepted.length === 0 ? null : lateAccepted.here;
  const isSame = last?.of.findings === findings && last.of.accepted === accepted && last.judged === (judge !== null);
  if (last && isSame) return last.now;
  const still = judge?.stillAccepted(findings, accepted) ?? { of: new Map(), noLonger: [] };
  const waiting = still.of.size === 0 ? findings : findings.filter((finding) => !still.of.has(finding));
  const all = judge?.standsAgain(findings, still.noLonger) ?? new Map<Finding, AcceptanceView>();
  const again = new Map([...all].filter(([finding]) => !still.of.has(finding)));
  last = { of: { findings, accepted }, judged: judge !== null, now: { ...still, waiting, again } };
  return last.now;
}

/** The same in a component, which is drawn again once it can be told. */
export function useAccepted(snap: Judged): AcceptedNow {
  useFetched(snap.accepted.length > 0 ? lateAccepted : null);
  return acceptedNow(snap);
}

/** Whether all rules have looked at the plan and it is known which findings are accepted: before, every count is too low or too high. */
export const isWholeCount = ({ moreToCheck, accepted }: Pick<SessionSnapshot, "moreToCheck" | "accepted">): boolean =>
  !moreToCheck && (accepted.length === 0 || lateAccepted.here !== null);

/** "2 accepted"; "" for none. */
export const acceptedWords = (count: number): string => (count === 0 ? "" : `${count} accepted`);
