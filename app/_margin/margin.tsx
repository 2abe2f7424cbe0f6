"use client";
/** Findings and threads as slips: about one item, or about the class as a whole. */
import { useMemo, useState } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import { acceptedWords, useAccepted } from "#app/_session/accepted-now.ts";
import { nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { PLACE } from "#app/_session/typed/typed-words.ts";
import { useTypedList } from "#app/_session/typed/use-typed.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { isAboutMissingWords } from "#lib/draft/about-words.ts";
import { countWords, type Slip, slipsOf } from "#lib/margin/slips.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { FindingSlip } from "./finding-slip.tsx";
import { isTyping, useHeldFindings } from "./held-slips.ts";
import { lateAcceptedList } from "./late-accept.ts";
import { lateThread } from "./late-thread.ts";
import styles from "./margin.module.css";
import { COMMENT_ON_PLAN, commentOnWords, foldedFindings, nothingHere } from "./margin-words.ts";
import { NewThread } from "./new-thread.tsx";

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
  const { plan, threads } = snap;
  const typing = useTypedList(session.typed);
  const { findings, gone } = useHeldFindings(snap.findings, typing);
  const { of: accepted } = useAccepted(snap);
  const all = useMemo(
    () =>
      slipsOf({ plan, findings, threads, showSettled: true, only: about }).filter(
        (slip) => about === null || !isOnChange(slip),
      ),
    [plan, findings, threads, about],
  );
  const isSettled = (slip: Slip) => slip.kind === "thread" && slip.thread.settled && !isTyping(typing, slip.thread);
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
          <p className={styles.counts}>{countsOf(slips, accepted, gone)}</p>
          <Slips {...{ session, about, gone }} slips={inDraft ? slips.filter((slip) => !isFolded(slip)) : slips} />
          {inDraft && <Folded {...{ session, about, gone }} slips={slips.filter(isFolded)} />}
        </>
      )}
      {snap.rights.comments && <Comments session={session} about={about} />}
      {about === null && snap.accepted.length > 0 && <LatePart part={lateAcceptedList} props={{ session }} />}
      {settled > 0 && <ShowSettled count={settled} shown={showSettled} onTurn={() => setShowSettled(!showSettled)} />}
    </section>
  );
}

interface ShowSettledProps {
  readonly count: number;
  readonly shown: boolean;
  readonly onTurn: () => void;
}

const ShowSettled = ({ count, shown, onTurn }: ShowSettledProps) => (
  <button type="button" className="text-button text-button-low small" aria-expanded={shown} onClick={onTurn}>
    {shown ? "Hide" : "Show"} {count} settled
  </button>
);

/** Begins a thread on the item, or on the plan. */
function Comments({ session, about }: Pick<MarginProps, "session" | "about">) {
  const { plan } = useSnapshot(session);
  const item = about === null ? undefined : itemById(plan, about);
  return (
    <div className={styles.acts}>
      <NewThread
        session={session}
        key={about}
        anchor={about === null ? { kind: "plan" } : { kind: "item", itemId: about }}
        at={about === null ? { place: PLACE.plan, items: [] } : { place: PLACE.item(about), items: [about] }}
        words={item ? commentOnWords(nameOf(plan, item)) : COMMENT_ON_PLAN}
        place={item?.kind === "move" ? { moveId: item.move } : {}}
      />
    </div>
  );
}

/** They stand at the change. */
const isOnChange = (slip: Slip): boolean => slip.kind === "thread" && slip.thread.anchor.kind === "change";

const isFolded = (slip: Slip): boolean => slip.kind === "finding" && isAboutMissingWords(slip.finding);

type SlipsProps = Pick<MarginProps, "session" | "about"> & {
  readonly slips: readonly Slip[];
  /** Findings that are not found any more, but that this person is writing about. */
  readonly gone: ReadonlySet<Finding>;
};

function Folded(props: SlipsProps) {
  if (props.slips.length === 0) return null;
  return (
    <details>
      <summary>{foldedFindings(props.slips.length)}</summary>
      <Slips {...props} />
    </details>
  );
}

function Slips({ session, slips, about, gone }: SlipsProps) {
  return (
    <ul className={styles.slips} aria-label="Findings and threads">
      {slips.map((slip) => (
        <li key={slip.id} data-about={slip.about ?? undefined}>
          {slip.kind === "finding" ? (
            <FindingSlip {...{ session }} finding={slip.finding} from={about} isGone={gone.has(slip.finding)} />
          ) : (
            <LatePart part={lateThread} props={{ session, thread: slip.thread }} />
          )}
        </li>
      ))}
    </ul>
  );
}

/** Accepted findings are counted apart from those that wait. */
function countsOf(slips: readonly Slip[], accepted: ReadonlyMap<Finding, unknown>, gone: ReadonlySet<Finding>): string {
  const findings = slips.flatMap((slip) => (slip.kind === "finding" && !gone.has(slip.finding) ? [slip.finding] : []));
  const waiting = findings.filter((finding) => !accepted.has(finding));
  const threads = slips.flatMap((slip) => (slip.kind === "thread" ? [slip.thread] : []));
  const words = acceptedWords(findings.length - waiting.length);
  return words === "" ? countWords(waiting, threads) : `${countWords(waiting, threads)}, ${words}`;
}
