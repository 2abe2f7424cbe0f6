"use client";
import { talkPercent } from "#lib/cues/class-talk.ts";
/** What is to be known of the class as a whole, in one line: how much was found, how much is talk, how often springs change. */
import { agree } from "#lib/plan/format.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import { LEVEL_WORDS, levelCounts } from "#lib/rules/level-words.ts";
import { acceptedWords, isWholeCount, useAccepted } from "../_session/accepted-now.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import styles from "./class-line.module.css";

interface ClassLineProps {
  readonly snap: SessionSnapshot;
  /** Goes to the next finding of a level. */
  readonly onFinding: (level: FindingLevel) => void;
  /** Goes to what the figure of talk is made of. */
  readonly onTalk: () => void;
}

export function ClassLine({ snap, onFinding, onTalk }: ClassLineProps) {
  const { springChanges } = snap.balance.setups;
  return (
    <div className={styles.line}>
      <Findings snap={snap} onFinding={onFinding} />
      <button type="button" data-wrong={snap.classTalk.aside > 0 || undefined} onClick={onTalk}>
        <b>{talkPercent(snap.classTalk)}</b> of the class is talk
      </button>
      <p>
        <b>{springChanges}</b> {agree(springChanges, "spring change", "spring changes")}
      </p>
      {snap.moreToCheck && snap.saveState === "offline" && (
        <p className={styles.unchecked}>whether the lines match the plan is checked once you are online</p>
      )}
    </div>
  );
}

/** No number stands here that the rest of the rules, or what a lead accepted, may change in a moment. */
const CHECKING = "checking the class…";

/** How many findings there are of each level; each count leads to the next one. */
function Findings({ snap, onFinding }: Pick<ClassLineProps, "snap" | "onFinding">) {
  const { waiting, of: accepted } = useAccepted(snap);
  if (snap.plan.items.length === 0) return null;
  const offline = snap.saveState === "offline";
  if (!offline && !isWholeCount(snap)) return <p>{CHECKING}</p>;
  const counts = levelCounts(waiting);
  if (counts.length + accepted.size === 0)
    return <p className={styles.clean}>{snap.moreToCheck ? "nothing found so far" : "nothing found"}</p>;
  return (
    <>
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
      {accepted.size > 0 && <p>{acceptedWords(accepted.size)}</p>}
      {snap.moreToCheck && <p className={styles.unchecked}>so far</p>}
    </>
  );
}
