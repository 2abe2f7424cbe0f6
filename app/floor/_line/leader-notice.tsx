"use client";
/** On the coach's own screen: somebody asks to lead, or another screen leads and this class goes on here alone. */
import { useFormats } from "#app/_parts/formats.tsx";
import { REFUSAL_WORDS } from "#lib/line/line-words.ts";
import live from "../_class/live-class.module.css";
import styles from "./line.module.css";
import { apartWords } from "./screens-words.ts";
import { isLeaderGone, type Lead } from "./use-lead.ts";
import type { FloorLine } from "./use-line.ts";
import { useSecond } from "./use-second.ts";

interface Props {
  readonly line: FloorLine;
  readonly lead: Lead;
  /** Leaves this screen's own class and follows the one that is led. */
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
  const { line, you } = floorLine.state;
  return (
    <p className={`${live.aside} ${styles.notice}`} role="alert">
      {apartWords(floorLine, useFormats())}
      <button type="button" onClick={onFollow}>
        follow it
      </button>
      <ToLead absent={isLeaderGone(floorLine)} waits={line?.asked?.id === you} link={floorLine.link} />
    </p>
  );
}

/** A leader that is gone cannot be asked: the coach may lead the other screens from here at once. */
function ToLead({ absent, waits, link }: { absent: boolean; waits: boolean; link: FloorLine["link"] }) {
  if (absent)
    return (
      <button type="button" onClick={() => link?.lead(true)}>
        lead from here
      </button>
    );
  return (
    <button type="button" onClick={() => (waits ? link?.withdraw() : link?.lead(false))}>
      {waits ? "cancel request" : "ask to lead"}
    </button>
  );
}
