"use client";
/** Findings and threads as slips: about one item, or about the class as a whole. */
import { useMemo, useState } from "react";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { isAboutMissingWords } from "#lib/draft/about-words.ts";
import { countWords, type Slip, slipsOf } from "#lib/margin/slips.ts";
import { FindingSlip } from "./finding-slip.tsx";
import styles from "./margin.module.css";
import { foldedFindings, nothingHere } from "./margin-words.ts";
import { NewThread } from "./new-thread.tsx";
import { ThreadSlip } from "./thread-slip.tsx";

interface MarginProps {
  readonly session: PlanSession;
  /** The item; null for the class as a whole. */
  readonly about: string | null;
  /** Lines are proposed for it: what was found about its missing words is folded into one line. */
  readonly inDraft?: boolean;
}

export function Margin({ session, about, inDraft = false }: MarginProps) {
  const snap = useSnapshot(session);
  const [showSettled, setShowSettled] = useState(false);
  const { plan, findings, threads } = snap;
  const all = useMemo(
    () => slipsOf({ plan, findings, threads, showSettled: true, only: about }),
    [plan, findings, threads, about],
  );
  const isSettled = (slip: Slip) => slip.kind === "thread" && slip.thread.settled;
  const settled = all.filter(isSettled).length;
  const slips = showSettled ? all : all.filter((slip) => !isSettled(slip));
  return (
    <section
      className={styles.list}
      aria-label={about === null ? "Findings and threads of the class" : "Findings and threads of this item"}
    >
      {slips.length === 0 ? (
        <p className="quiet small">{nothingHere(snap.moreToCheck)}</p>
      ) : (
        <>
          <p className={styles.counts}>{countsOf(slips)}</p>
          <Slips {...{ session, about }} slips={inDraft ? slips.filter((slip) => !isFolded(slip)) : slips} />
          {inDraft && <Folded {...{ session, about }} slips={slips.filter(isFolded)} />}
        </>
      )}
      {snap.rights.comments && <NewThread session={session} itemId={about} />}
      {settled > 0 && (
        <button
          type="button"
          className="text-button text-button-low small"
          aria-expanded={showSettled}
          onClick={() => setShowSettled(!showSettled)}
        >
          {showSettled ? "Hide" : "Show"} {settled} settled
        </button>
      )}
    </section>
  );
}

const isFolded = (slip: Slip): boolean => slip.kind === "finding" && isAboutMissingWords(slip.finding);

type SlipsProps = Pick<MarginProps, "session" | "about"> & { readonly slips: readonly Slip[] };

function Folded(props: SlipsProps) {
  if (props.slips.length === 0) return null;
  return (
    <details>
      <summary>{foldedFindings(props.slips.length)}</summary>
      <Slips {...props} />
    </details>
  );
}

function Slips({ session, slips, about }: SlipsProps) {
  return (
    <ul className={styles.slips} aria-label="Findings and threads">
      {slips.map((slip) => (
        <li key={slip.id} data-about={slip.about ?? undefined}>
          {slip.kind === "finding" ? (
            <FindingSlip session={session} finding={slip.finding} from={about} />
          ) : (
            <ThreadSlip session={session} thread={slip.thread} />
          )}
        </li>
      ))}
    </ul>
  );
}

function countsOf(slips: readonly Slip[]): string {
  return countWords(
    slips.flatMap((slip) => (slip.kind === "finding" ? [slip.finding] : [])),
    slips.flatMap((slip) => (slip.kind === "thread" ? [slip.thread] : [])),
  );
}
