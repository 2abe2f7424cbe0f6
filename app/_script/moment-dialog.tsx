"use client";
/** When one line of a script begins: when it comes, or so many seconds from the start or before the end of the work. */
import { useRef, useState } from "react";
import type * as Y from "yjs";
import { ChoiceField } from "#app/_parts/choice.tsx";
import { Dialog } from "#app/_parts/dialog.tsx";
import { NumberField } from "#app/_parts/number-field.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import { readLine } from "#lib/doc/script.ts";
import { setLineBegin } from "#lib/doc/write.ts";
import type { LineBegin, MoveItem } from "#lib/plan/schema.ts";
import styles from "./script.module.css";
import { BEGIN, beginSetWords } from "./script-words.ts";

/** Which line is asked about. It is held itself: its index changes when others add lines. */
export function useMoment(fragment: Y.XmlFragment) {
  const [line, setLine] = useState<Y.XmlElement | null>(null);
  const open = (index: number) => {
    const found = fragment.get(index);
    setLine(found && "getAttribute" in found ? (found as Y.XmlElement) : null);
  };
  return { line, open, close: () => setLine(null) };
}

type Way = keyof typeof BEGIN.ways;
const WAYS = (["free", "start", "end"] as const).map((value) => ({ value, label: BEGIN.ways[value] }));

interface Props {
  readonly session: PlanSession;
  readonly item: MoveItem;
  readonly line: Y.XmlElement;
  readonly onClose: () => void;
}

export function MomentDialog({ session, item, line, onClose }: Props) {
  const { plan } = useSnapshot(session);
  const closer = useRef<(() => void) | null>(null);
  const [read] = useState(() => readLine(line));
  const [way, setWay] = useState<Way>(() => wayOf(read?.at));
  const [seconds, setSeconds] = useState(() => secondsOf(read?.at, item));
  const set = () => {
    const at = way === "free" ? undefined : way === "start" ? { afterSeconds: seconds } : { leftSeconds: seconds };
    if (session.act((w) => setLineBegin(w, line, at))) session.say(beginSetWords(at));
    closer.current?.();
  };
  return (
    <Dialog title={BEGIN.title} onClose={onClose} closer={closer}>
      {read && <p className={styles.quote}>{readerOf(plan)(item, read.text)}</p>}
      <ChoiceField label={BEGIN.choice} value={way} options={WAYS} onChoose={setWay} />
      {way !== "free" && <Seconds seconds={seconds} most={item.seconds} onSet={setSeconds} />}
      <button type="button" className="button button-strong" onClick={set}>
        {BEGIN.set}
      </button>
    </Dialog>
  );
}

const wayOf = (at: LineBegin | undefined): Way => (!at ? "free" : "afterSeconds" in at ? "start" : "end");

/** Offered at first: a third of the work, in whole steps. */
function secondsOf(at: LineBegin | undefined, item: MoveItem): number {
  if (at) return "afterSeconds" in at ? at.afterSeconds : at.leftSeconds;
  return Math.min(item.seconds, STEP * Math.max(1, Math.round(item.seconds / 3 / STEP)));
}

const STEP = 5;

interface SecondsProps {
  readonly seconds: number;
  /** A line begins within its item. */
  readonly most: number;
  readonly onSet: (seconds: number) => void;
}

function Seconds({ seconds, most, onSet }: SecondsProps) {
  const step = (by: 1 | -1) => {
    const next = Math.min(most, Math.max(0, seconds + by * STEP));
    return (
      <button
        type="button"
        className="square-button"
        aria-label={`${STEP} seconds ${by === 1 ? "more" : "less"}`}
        disabled={next === seconds}
        onClick={() => onSet(next)}
      >
        {by === 1 ? "+" : "−"}
      </button>
    );
  };
  return (
    <div className={styles.stepper}>
      {step(-1)}
      <NumberField
        label={BEGIN.seconds}
        value={seconds}
        max={most}
        unit="s"
        onCommit={(value) => value !== undefined && onSet(value)}
      />
      {step(1)}
    </div>
  );
}
