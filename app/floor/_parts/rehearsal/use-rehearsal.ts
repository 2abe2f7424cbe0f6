/**
 * A rehearsal in progress: its log and taps, what the next tap means, and what the coach may do. The time is the browser's
 * forward-only clock; every tap is handed to `keep`, so that a page that is opened again goes on.
 */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Card } from "#lib/card/schema.ts";
import { actEvent, type PlainAct } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { type ClockAnchor, sleptBetween } from "#lib/floor/log.ts";
import { floorView } from "#lib/floor/now.ts";
import {
  advancedTo,
  afterTap,
  type Beat,
  beatsOf,
  type Rehearsing,
  rebasedRehearsal,
  rehearsalSlept,
  type TapMeaning,
  tapMeaning,
  waitingSeconds,
} from "#lib/floor/rehearsal.ts";
import { rehearsedTimes } from "#lib/floor/rehearsed.ts";
import type { FloorView } from "#lib/floor/view.ts";
import { newSessionId } from "../use-class-logs.ts";

const TICK_MS = 100;

/** What a page needs to go on with a rehearsal. */
export interface KeptRehearsal {
  readonly card: Card;
  readonly rehearsing: Rehearsing;
  readonly anchor: ClockAnchor;
  readonly sessionId: string;
}
export interface RunningRehearsal {
  readonly view: FloorView;
  readonly meaning: TapMeaning;
  /** The line to say now; else the one that comes next in this step. */
  readonly line: { readonly beat: Beat; readonly now: boolean } | null;
  /** Seconds a change has waited for its set-up beyond its time. */
  readonly waiting: number;
  tap(): void;
  act(type: Extract<PlainAct, "hold" | "resume" | "next" | "back" | "end">): void;
  /** What it was, as a log of kind rehearsal; null before it began. */
  told(): ClassLog | null;
}

const bothClocks = (): ClockAnchor => ({ mono: performance.now(), wall: Date.now() });

function firstOf(resumed: KeptRehearsal | null): Rehearsing {
  if (resumed) return rebasedRehearsal(resumed.rehearsing, resumed.anchor, bothClocks());
  return { log: [{ type: "start", at: performance.now() }], taps: [] };
}

/** All that a screen shows of a moment: the page is drawn again only when this changes. */
function shownAt(card: Card, rehearsing: Rehearsing, now: number): string {
  const { phase, item, secondsLeft, held, progress, left } = floorView(card, rehearsing.log, now);
  const meaning = tapMeaning(card, rehearsing, now);
  const waiting = Math.floor(waitingSeconds(card, rehearsing, now));
  const beat = "beat" in meaning ? meaning.beat : null;
  const rail = Math.round(progress * 2000);
  return JSON.stringify([phase, item?.id, secondsLeft, held, rail, Math.ceil(left), meaning.kind, beat, waiting]);
}

export function useRehearsal(
  card: Card,
  resumed: KeptRehearsal | null,
  keep: (rehearsal: KeptRehearsal) => void,
): RunningRehearsal {
  const [rehearsing, setRehearsing] = useState(() => firstOf(resumed));
  const [now, setNow] = useState(() => performance.now());
  const [sessionId] = useState(() => resumed?.sessionId ?? newSessionId());
  const latest = useRef(rehearsing);
  const shown = useRef("");
  const keeping = useRef(keep);
  keeping.current = keep;

  const write = useCallback(
    (next: Rehearsing) => {
      latest.current = next;
      setRehearsing(next);
      setNow(performance.now());
      keeping.current({ card, rehearsing: next, anchor: bothClocks(), sessionId });
    },
    [card, sessionId],
  );

  useEffect(() => {
    write(latest.current);
    let last = bothClocks();
    const look = () => {
      const is = bothClocks();
      const asleep = sleptBetween(last, is);
      last = is;
      const was = asleep > 0 ? rehearsalSlept(latest.current, is.mono, asleep) : latest.current;
      const next = advancedTo(card, was, is.mono);
      if (next !== latest.current) write(next);
      else if (shownAt(card, next, is.mono) !== shown.current) {
        shown.current = shownAt(card, next, is.mono);
        setNow(is.mono);
      }
    };
    const tick = setInterval(look, TICK_MS);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(tick);
      document.removeEventListener("visibilitychange", look);
    };
  }, [card, write]);

  const meaning = tapMeaning(card, rehearsing, now);
  return {
    view: floorView(card, rehearsing.log, now),
    meaning,
    line: lineOf(card, meaning),
    waiting: waitingSeconds(card, rehearsing, now),
    tap: () => write(afterTap(card, latest.current, performance.now())),
    act: (type) => {
      const at = performance.now();
      const was = advancedTo(card, latest.current, at);
      write({ ...was, log: [...was.log, actEvent(card, was.log, type, at)] });
    },
    told: () => {
      const clock = bothClocks();
      const log = classLogUntil(card, latest.current.log, clock.mono, { sessionId, kind: "rehearsal", clock });
      return log && { ...log, rehearsed: rehearsedTimes(card, latest.current) };
    },
  };
}

function lineOf(card: Card, meaning: TapMeaning): RunningRehearsal["line"] {
  if (meaning.kind !== "said" && meaning.kind !== "said-early") return null;
  const beat = beatsOf(card)[meaning.beat];
  return beat ? { beat, now: meaning.kind === "said" } : null;
}
