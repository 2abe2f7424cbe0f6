"use client";
/** The header over the plan: what it is called, whether it ends on time, who is here, what is saved, and its one next act. */
import Link from "next/link";
import { type ReactNode, type Ref, useMemo } from "react";
import { STATE_WORDS } from "#app/_parts/state-words.ts";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { againstLength, freeSeconds } from "#lib/clock/length-words.ts";
import { moreMoves, moreMovesWords } from "#lib/fit/more-moves.ts";
import { clockTime, plural } from "#lib/plan/format.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { usePageActs } from "../_session/page-acts.tsx";
import { People } from "../_session/people.tsx";
import { standingProposals } from "../_session/proposals.ts";
import type { PlanSession } from "../_session/session.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import styles from "./band.module.css";

interface BandProps {
  readonly ref: Ref<HTMLElement>;
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  /** Under the title: how much of what changed has been read. */
  readonly read?: ReactNode;
  /** What the plan's state asks for next, and the menu of everything else. */
  readonly children: ReactNode;
}

export function Band({ ref, session, snap, read, children }: BandProps) {
  return (
    <header ref={ref} className={styles.band}>
      <Title session={session} snap={snap} read={read} />
      <Clock snap={snap} />
      <div className={styles.here}>
        <People session={session} snap={snap} />
        <p className={styles.save} data-state={snap.saveState} role="status">
          {saveWords(snap)}
        </p>
      </div>
      <div className={styles.doing}>{children}</div>
    </header>
  );
}

/** The plan's title, the way back, and where the plan stands. */
function Title({ session, snap, read }: Pick<BandProps, "session" | "snap" | "read">) {
  const { edition, state, withdrawn } = snap.state;
  return (
    <div className={styles.title}>
      <h1 data-preview="">{planTitle(snap.plan.title)}</h1>
      <p>
        <Link href="/desk" className={styles.back}>
          Your desk
        </Link>
        {` · ${STATE_WORDS[state]} · `}
        {edition > 0 && (
          <>
            <a href={`/editions/${session.planId}/${edition}`} className={styles.back}>
              {`edition ${edition}${withdrawn ? " withdrawn" : ""}`}
            </a>
            {" · "}
          </>
        )}
        {session.studio.roomName}
        <ProposalCount snap={snap} />
      </p>
      {read}
    </div>
  );
}

/** How many proposals wait for an answer; they are listed when it is pressed. */
function ProposalCount({ snap }: Pick<BandProps, "snap">) {
  const { run } = usePageActs();
  const standing = standingProposals(snap).length;
  if (standing === 0) return null;
  return (
    <>
      {" · "}
      <button type="button" className={styles.count} onClick={run.proposals}>
        {plural(standing, "proposal")}
      </button>
    </>
  );
}

/** The clock, and the class against its length: a carriage that has to reach its stop. */
function Clock({ snap }: { snap: SessionSnapshot }) {
  const length = snap.plan.lengthSeconds;
  const free = freeSeconds(snap.total, length);
  const more = useMemo(() => moreMoves(snap.plan, snap), [snap]);
  const says = [againstLength(snap.total, length), more > 0 ? moreMovesWords(more) : ""].filter(Boolean).join(" · ");
  const longest = Math.max(snap.total, length, 1);
  return (
    <div className={styles.clock} data-wrong={free < 0 || undefined}>
      <p className={styles.value}>{clockTime(snap.total)}</p>
      <p className={styles.says}>{says}</p>
      <span className={styles.length} aria-hidden="true">
        <span className={styles.filled} style={{ width: `${(100 * Math.min(snap.total, length)) / longest}%` }} />
        {free < 0 && <span className={styles.over} style={{ width: `${(-100 * free) / longest}%` }} />}
        <span className={styles.stop} style={{ left: `${(100 * length) / longest}%` }} />
      </span>
    </div>
  );
}
