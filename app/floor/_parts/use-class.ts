/**
 * A class in progress: its log, the view of this moment, and what the coach may do. The time is the browser's forward-only
 * clock; every change is kept on the device before anything else can happen to the page.
 */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { actEvent, type PlainAct } from "#lib/floor/acts.ts";
import { type FloorLog, rebaseLog, sleptLog } from "#lib/floor/log.ts";
import { floorView } from "#lib/floor/now.ts";
import type { FloorView } from "#lib/floor/view.ts";
import { keep, letGo, type Running } from "./kept.ts";

const TICK_MS = 100;
/** The anchor of the clock is written again this often, so that only the time a page was away is read off the wall clock. */
const KEEP_MS = 5000;
/** The wall clock this far ahead of the forward-only one between two ticks: the device slept. */
const SLEPT_MS = 5000;

export type Act = PlainAct;

export interface RunningClass {
  readonly view: FloorView;
  /** Seconds the device slept since it was last asked about it; 0 when it did not. */
  readonly sleptSeconds: number;
  act(type: Act): void;
  /** Jumps ahead by what the device slept (true), or stays where the class is. */
  answerSleep(jump: boolean): void;
  /** Forgets the class: the next one can begin. */
  leave(): Promise<void>;
}

const bothClocks = () => ({ mono: performance.now(), wall: Date.now() });

/** The log a class begins with: its start now, or where it was when the page went away. */
const firstLog = (running: Running | null): FloorLog =>
  running ? rebaseLog(running.log, running.anchor, bothClocks()) : [{ type: "start", at: performance.now() }];

/** All that a screen shows of a moment: the page is drawn again only when this changes, some twice a second. */
function shownAt(card: Card, log: FloorLog, now: number): string {
  const { phase, item, secondsLeft, line, held, progress, left, lateBy } = floorView(card, log, now);
  const rail = Math.round(progress * 2000);
  return JSON.stringify([phase, item?.id, secondsLeft, line, held, rail, Math.ceil(left - 1e-6), Math.floor(lateBy)]);
}

export function useClass(card: Card, envelope: CardEnvelope, running: Running | null): RunningClass {
  const [log, setLog] = useState<FloorLog>(() => firstLog(running));
  const [now, setNow] = useState(() => performance.now());
  const [sleptSeconds, setSlept] = useState(0);
  const latest = useRef(log);
  const shown = useRef("");

  const write = useCallback(
    (next: FloorLog) => {
      latest.current = next;
      setLog(next);
      setNow(performance.now());
      keep("running", { envelope, log: next, anchor: bothClocks() }).catch(() => undefined); // the class goes on without
    },
    [envelope],
  );

  useEffect(() => {
    write(latest.current);
    let last = bothClocks();
    const tick = setInterval(() => {
      const is = bothClocks();
      const slept = is.wall - last.wall - (is.mono - last.mono);
      last = is;
      if (slept > SLEPT_MS) {
        setSlept((seconds) => seconds + slept / 1000);
        write(sleptLog(latest.current, is.mono, slept));
      } else if (shownAt(card, latest.current, is.mono) !== shown.current) {
        shown.current = shownAt(card, latest.current, is.mono);
        setNow(is.mono);
      }
    }, TICK_MS);
    const keeping = setInterval(() => {
      keep("running", { envelope, log: latest.current, anchor: bothClocks() }).catch(() => undefined);
    }, KEEP_MS);
    return () => {
      clearInterval(tick);
      clearInterval(keeping);
    };
  }, [card, envelope, write]);

  return {
    view: floorView(card, log, now),
    sleptSeconds,
    act: (type) => write([...latest.current, actEvent(card, latest.current, type, performance.now())]),
    answerSleep: (jump) => {
      const at = performance.now();
      const to = floorView(card, latest.current, at).elapsed + sleptSeconds;
      if (jump) write([...latest.current, { type: "seek", at, to }]);
      setSlept(0);
    },
    leave: () => letGo("running"),
  };
}
