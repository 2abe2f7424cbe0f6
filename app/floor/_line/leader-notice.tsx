"use client";
/** On the coach's own screen: somebody asks to lead, or another screen does and this class runs on here alone. */
import { REFUSAL_WORDS } from "#lib/line/line-words.ts";
import live from "../_parts/live-class.module.css";
import styles from "./line.module.css";
import { isLeaderGone, type Lead } from "./use-lead.ts";
import type { FloorLine } from "./use-line.ts";
import { useSecond } from "./use-second.ts";
import { hourMinute } from "./when.ts";

interface Props {
  readonly line: FloorLine;
  readonly lead: Lead;
  /** Lets go of this screen's own class and follows the one that is led. */
  onFollow(): void;
}

export function LeaderNotice({ line, lead, onFollow }: Props) {
  const { line: is, you, contact, refusal } = line.state;
  if (contact === "on" && is?.asked && is.leader?.id === you) {
    return (
      <p className={`${live.aside} ${styles.notice}`} role="alert">
        {is.asked.label} asks to lead.
        <button type="button" onClick={() => lead.answer(true)}>
          hand over
        </button>
        <button type="button" onClick={() => lead.answer(false)}>
          keep leading
        </button>
      </p>
    );
  }
  if (lead.apart && is?.leader) return <Apart line={line} onFollow={onFollow} />;
  if (refusal !== "not-signed") return null;
  return (
    <p className={`${live.aside} ${styles.notice}`} role="status">
      {REFUSAL_WORDS[refusal]}
    </p>
  );
}

function Apart({ line: floorLine, onFollow }: { line: FloorLine; onFollow(): void }) {
  useSecond();
  const { line, you, refusal } = floorLine.state;
  const absent = isLeaderGone(floorLine);
  const waits = line?.asked?.id === you;
  return (
    <p className={`${live.aside} ${styles.notice}`} role="alert">
      {line?.leader?.label} leads since {hourMinute(line?.leader?.sinceWall ?? 0)}
      {absent && " and is off the line"}; this class runs on here alone.
      {waits && !absent && " Asked, waiting for the answer."}
      {!waits && refusal && ` ${REFUSAL_WORDS[refusal]}`}
      <button type="button" onClick={onFollow}>
        follow it
      </button>
      <ToLead absent={absent} waits={waits} link={floorLine.link} />
    </p>
  );
}

/** A leader that is gone cannot be asked: this class leads the other screens from here, once the coach says so. */
function ToLead({ absent, waits, link }: { absent: boolean; waits: boolean; link: FloorLine["link"] }) {
  if (absent)
    return (
      <button type="button" onClick={() => link?.lead(true)}>
        lead from here
      </button>
    );
  return (
    <button type="button" onClick={() => (waits ? link?.withdraw() : link?.lead(false))}>
      {waits ? "take it back" : "ask to lead"}
    </button>
  );
}
