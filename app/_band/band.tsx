"use client";
/** The band over the plan: whether it ends on time, how much is said, whether sides match, what was found, what is saved. */
import Link from "next/link";
import type { ReactNode, Ref } from "react";
import { SideBars } from "#app/_parts/balance/side-bars.tsx";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { againstLength, freeSeconds } from "#lib/clock/length-words.ts";
import { talkPercent } from "#lib/cues/class-talk.ts";
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
  readonly title: string;
  readonly roomName: string;
  readonly onFinding: (level: FindingLevel) => void;
  /** To what the talk's figure means. */
  readonly onTalk: () => void;
  /** Hand in, hand back, sign. */
  readonly acts: ReactNode;
}

const STATE_WORDS = {
  "in-writing": "in writing",
  "handed-in": "handed in",
  "handed-back": "handed back",
  "signed-off": "signed off",
} as const;

/** Groups shown at most. */
const BARS = 4;

export function Band({ ref, session, snap, title, roomName, onFinding, onTalk, acts }: BandProps) {
  const { state } = snap;
  const edition = state.edition > 0 ? `edition ${state.edition}${state.withdrawn ? " withdrawn" : ""}` : null;
  const line = [STATE_WORDS[state.state], edition, roomName].filter(Boolean).join(" · ");
  return (
    <header ref={ref} className={styles.band}>
      <div className={styles.title}>
        <h1>{title.trim() || "Plan without a title"}</h1>
        <p>
          <Link href="/desk" className={styles.back}>
            Your desk
          </Link>
          {` · ${line}`}
          {state.edition > 0 && (
            <>
              {" · "}
              <a href={`/editions/${session.planId}/${state.edition}`} className={styles.back}>
                the edition
              </a>
              {" · "}
              <a href={`/editions/${session.planId}/${state.edition}/print`} className={styles.back}>
                print sheet
              </a>
              {" · "}
              <a href={`/editions/${session.planId}/${state.edition}/crew`} className={styles.back}>
                crew sheet
              </a>
              {" · "}
              <a href={`/editions/${session.planId}/${state.edition}/classes`} className={styles.back}>
                classes taught
              </a>
            </>
          )}
        </p>
      </div>
      <div className={styles.figures}>
        <ClockFigure snap={snap} />
        <TalkFigure snap={snap} onTalk={onTalk} />
        <Figure
          value={String(snap.balance.setups.springChanges)}
          says={agree(snap.balance.setups.springChanges, "spring change", "spring changes")}
        />
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
        {session.canWrite && <UndoButtons session={session} snap={snap} />}
        {acts}
      </div>
    </header>
  );
}

function Figure({
  value,
  says,
  wrong = false,
  children,
}: {
  value: string;
  says: ReactNode;
  wrong?: boolean;
  children?: ReactNode;
}) {
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
  return <Figure value={clockTime(snap.total)} says={againstLength(snap.total, length)} wrong={over} />;
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

/** How many of each level; a press goes to the next one. */
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
          title={`Go to the next: ${LEVEL_WORDS[level]}`}
          onClick={() => onFinding(level)}
        >
          {words}
        </button>
      ))}
    </div>
  );
}

function UndoButtons({ session, snap }: { session: PlanSession; snap: SessionSnapshot }) {
  return (
    <span className={styles.undo}>
      <button type="button" className="button" disabled={!snap.canUndo} onClick={() => session.undo()}>
        Undo
      </button>
      <button type="button" className="button" disabled={!snap.canRedo} onClick={() => session.redo()}>
        Redo
      </button>
    </span>
  );
}
