"use client";
/** The band over the plan: whether it ends on time, how much is talk, whether sides match, what was found, what is saved. */
import Link from "next/link";
import { Fragment, type ReactNode, type Ref, useMemo } from "react";
import { SideBars } from "#app/_parts/balance/side-bars.tsx";
import { UndoButtons } from "#app/_parts/commands/undo-buttons.tsx";
import { STATE_WORDS } from "#app/_parts/state-words.ts";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { againstLength, freeSeconds } from "#lib/clock/length-words.ts";
import { talkPercent } from "#lib/cues/class-talk.ts";
import { moreMoves, moreMovesWords } from "#lib/fit/more-moves.ts";
import { agree, clockTime } from "#lib/plan/format.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import { LEVEL_WORDS, levelCounts } from "#lib/rules/level-words.ts";
import { People } from "../_session/people.tsx";
import type { PlanSession } from "../_session/session.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import styles from "./band.module.css";

interface BandProps {
  readonly ref: Ref<HTMLElement>;
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  /** Goes to the next finding of a level. */
  readonly onFinding: (level: FindingLevel) => void;
  /** Goes to what the figure of talk is made of. */
  readonly onTalk: () => void;
  /** What can be done with the plan as a whole. */
  readonly children: ReactNode;
}

/** Groups of muscles shown at most. */
const BARS = 4;

export function Band({ ref, session, snap, onFinding, onTalk, children }: BandProps) {
  const { springChanges } = snap.balance.setups;
  return (
    <header ref={ref} className={styles.band}>
      <Title session={session} snap={snap} />
      <div className={styles.figures}>
        <ClockFigure snap={snap} />
        <TalkFigure snap={snap} onTalk={onTalk} />
        <Figure value={String(springChanges)} says={agree(springChanges, "spring change", "spring changes")} />
        <div className={styles.bars}>
          <SideBars plan={snap.plan} balance={snap.balance} most={BARS} narrow />
        </div>
        <Findings snap={snap} onFinding={onFinding} />
      </div>
      <div className={styles.doing}>
        <p className={styles.save} data-state={snap.saveState} role="status">
          {saveWords(snap)}
        </p>
        <People session={session} snap={snap} />
        {session.canWrite && <UndoButtons session={session} can={snap} className={styles.undo} />}
        {children}
      </div>
    </header>
  );
}

const EDITION_PAGES = [
  ["", "the edition"],
  ["/print", "print sheet"],
  ["/crew", "crew sheet"],
  ["/classes", "classes taught"],
] as const;

/** The plan's title, the way back, where the plan stands, and the pages of its newest edition. */
function Title({ session, snap }: Pick<BandProps, "session" | "snap">) {
  const { edition, state, withdrawn } = snap.state;
  const name = edition > 0 ? `edition ${edition}${withdrawn ? " withdrawn" : ""}` : null;
  return (
    <div className={styles.title}>
      <h1>{snap.plan.title.trim() || "Plan without a title"}</h1>
      <p>
        <Link href="/desk" className={styles.back}>
          Your desk
        </Link>
        {` · ${[STATE_WORDS[state], name, session.studio.roomName].filter(Boolean).join(" · ")}`}
        {edition > 0 &&
          EDITION_PAGES.map(([page, words]) => (
            <Fragment key={page}>
              {" · "}
              <a href={`/editions/${session.planId}/${edition}${page}`} className={styles.back}>
                {words}
              </a>
            </Fragment>
          ))}
      </p>
    </div>
  );
}

interface FigureProps {
  readonly value: string;
  readonly says: ReactNode;
  readonly wrong?: boolean;
  readonly children?: ReactNode;
}

function Figure({ value, says, wrong = false, children }: FigureProps) {
  return (
    <div className={styles.figure} data-wrong={wrong || undefined}>
      <p className={styles.value}>{value}</p>
      <p className={styles.says}>{says}</p>
      {children}
    </div>
  );
}

function ClockFigure({ snap }: { snap: SessionSnapshot }) {
  const length = snap.plan.lengthSeconds;
  const over = freeSeconds(snap.total, length) < 0;
  const more = useMemo(() => moreMoves(snap.plan, snap), [snap]);
  const says = [againstLength(snap.total, length), more > 0 ? moreMovesWords(more) : ""].filter(Boolean).join(" · ");
  return <Figure value={clockTime(snap.total)} says={says} wrong={over} />;
}

function TalkFigure({ snap, onTalk }: Pick<BandProps, "snap" | "onTalk">) {
  const { classTalk } = snap;
  return (
    <Figure
      value={talkPercent(classTalk)}
      says={
        <button type="button" className={styles.means} onClick={onTalk}>
          of the class is talk
        </button>
      }
      wrong={classTalk.aside > 0}
    >
      <span className={styles.meter} aria-hidden="true">
        <span style={{ width: `${Math.min(1, classTalk.share) * 100}%` }} />
      </span>
    </Figure>
  );
}

/** How many findings there are of each level; each count leads to the next one. */
function Findings({ snap, onFinding }: Pick<BandProps, "snap" | "onFinding">) {
  const counts = levelCounts(snap.findings);
  if (snap.plan.items.length === 0) return null;
  return (
    <div className={styles.findings}>
      {counts.length === 0 && <p className={styles.clean}>nothing found</p>}
      {counts.map(({ level, words }) => (
        <button
          key={level}
          type="button"
          data-level={level}
          title={`Go to the next finding: ${LEVEL_WORDS[level]}`}
          onClick={() => onFinding(level)}
        >
          {words}
        </button>
      ))}
    </div>
  );
}
