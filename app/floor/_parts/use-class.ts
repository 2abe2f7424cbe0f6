/**
 * A class in progress: its log, what it shows at this moment, and what the coach can do. Times come from the browser's
 * forward-only clock; every change is kept on the device at once.
 */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { actEvent, type PlainAct } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import { extension } from "#lib/floor/extension.ts";
import { type FloorLog, rebaseLog, sleptBetween, sleptLog } from "#lib/floor/log.ts";
import { floorView } from "#lib/floor/now.ts";
import { type Undoable, undoableAt } from "#lib/floor/undo.ts";
import type { FloorView } from "#lib/floor/view.ts";
import { type WayId, type Ways, wayEvent, waysAt } from "#lib/floor/ways.ts";
import { type KeptClass, keep, keepLog, letGo } from "./kept.ts";
import { REDRAW_CHECK_MS, shownAt } from "./redraw.ts";
import { newSessionId } from "./use-class-logs.ts";

/** The clock's anchor is written again this often, so that only the time while the page was closed comes from the wall clock. */
const KEEP_MS = 5000;

type Act = Exclude<PlainAct, "undo">;

export interface RunningClass {
  /** Events in ms of the browser's forward-only clock, and the id of their session. */
  readonly log: FloorLog;
  readonly sessionId: string;
  readonly view: FloorView;
  /** Seconds the device slept since it was last asked about it; 0 when it did not. */
  readonly sleptSeconds: number;
  /** The last act, while it can be undone; else null. */
  readonly undoable: Undoable | null;
  act(type: Act): void;
  /** Undoes `undoable`; the time that passed stays. */
  undo(): void;
  /** Can the present item be made longer? Only in a class that runs. */
  readonly canExtend: boolean;
  extend(seconds: number): void;
  /** How the class can be made to end on time now, and what each way costs. */
  ways(): Ways;
  /** Null takes the first. */
  endOnTime(way: WayId | null): void;
  /** Jumps ahead by the time the device slept (true), or stays where the class is. */
  answerSleep(jump: boolean): void;
  /** Adds the log to those that wait for the studio, once, as it is then. Resolves when it is on disk. */
  file(): Promise<void>;
  /** Makes room for the next class; `files`: its log is filed first, unless that was done. */
  leave(files: boolean): Promise<void>;
}

export const bothClocks = () => ({ mono: performance.now(), wall: Date.now() });

/** The log a class begins with: its start now, or where it was when the page was closed. */
const firstLog = (running: KeptClass | null): FloorLog =>
  running ? rebaseLog(running.log, running.anchor, bothClocks()) : [{ type: "start", at: performance.now() }];

export function useClass(card: Card, envelope: CardEnvelope, running: KeptClass | null): RunningClass {
  const [sessionId] = useState(() => running?.sessionId ?? newSessionId());
  const { log, latest, write, now, setNow } = useKeptLog(envelope, running, sessionId);
  const [sleptSeconds, setSlept] = useState(0);
  const addSlept = useCallback((seconds: number) => setSlept((before) => before + seconds), []);
  useClock(card, latest, { write, onShow: setNow, onSlept: addSlept });
  return {
    log,
    sessionId,
    view: floorView(card, log, now),
    sleptSeconds,
    undoable: undoableAt(card, log, now),
    canExtend: extension(card, log, 1, now) !== null,
    ...actsOn(card, latest, write),
    answerSleep: (jump) => {
      const at = performance.now();
      const to = floorView(card, latest.current, at).elapsed + sleptSeconds;
      if (jump) write([...latest.current, { type: "seek", at, to }]);
      setSlept(0);
    },
    ...useFiling(card, latest, sessionId),
  };
}

interface LatestLog {
  readonly current: FloorLog;
}

/** The log, and a way to write it that keeps it on the device; `now` is when it was last drawn, ms. */
function useKeptLog(envelope: CardEnvelope, running: KeptClass | null, sessionId: string) {
  const [log, setLog] = useState<FloorLog>(() => firstLog(running));
  const [now, setNow] = useState(() => performance.now());
  const latest = useRef(log);
  const keepLatest = useCallback(() => {
    // Without storage the class still runs, until the page is reloaded.
    keep("running", { envelope, log: latest.current, anchor: bothClocks(), sessionId }).catch(() => undefined);
  }, [envelope, sessionId]);
  const write = useCallback(
    (next: FloorLog) => {
      latest.current = next;
      setLog(next);
      setNow(performance.now());
      keepLatest();
    },
    [keepLatest],
  );
  useEffect(() => {
    write(latest.current);
    const keeping = setInterval(keepLatest, KEEP_MS);
    return () => clearInterval(keeping);
  }, [write, keepLatest]);
  return { log, latest, write, now, setNow };
}

interface ClockActs {
  write(next: FloorLog): void;
  /** Something that is shown has changed; `now` in ms. */
  onShow(now: number): void;
  /** The device slept for so many seconds, which the log has left out. */
  onSlept(seconds: number): void;
}

/** Checks the clock often, and says when a screen has to be drawn again or the device has slept. */
function useClock(card: Card, latest: LatestLog, { write, onShow, onSlept }: ClockActs): void {
  const shown = useRef("");
  useEffect(() => {
    let last = bothClocks();
    const look = () => {
      const is = bothClocks();
      const slept = sleptBetween(last, is);
      last = is;
      if (slept > 0) {
        onSlept(slept / 1000);
        write(sleptLog(latest.current, is.mono, slept));
        return;
      }
      // What can be undone changes with the clock too, even after the end.
      const undo = undoableAt(card, latest.current, is.mono);
      const shows = `${shownAt(card, latest.current, is.mono)} ${undo?.what} ${undo?.event.at}`;
      if (shows === shown.current) return;
      shown.current = shows;
      onShow(is.mono);
    };
    const tick = setInterval(look, REDRAW_CHECK_MS);
    // A background tab ticks once a second or less: it is right again as soon as somebody looks at it.
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(tick);
      document.removeEventListener("visibilitychange", look);
    };
  }, [card, latest, write, onShow, onSlept]);
}

/** Files the log of the class, once, as it is then. */
function useFiling(card: Card, latest: LatestLog, sessionId: string): Pick<RunningClass, "file" | "leave"> {
  const filed = useRef<Promise<void> | null>(null);
  const file = useCallback(() => {
    filed.current ??= fileLog(card, latest.current, sessionId);
    return filed.current;
  }, [card, latest, sessionId]);
  return {
    file,
    leave: async (files) => {
      // The log first: a page that is closed in between files the same session again.
      if (files) await file();
      await letGo("running");
    },
  };
}

async function fileLog(card: Card, log: FloorLog, sessionId: string): Promise<void> {
  const clock = bothClocks();
  const told = classLogUntil(card, log, clock.mono, { sessionId, kind: "class", clock });
  if (told) await keepLog(told);
}

type ActsOn = Pick<RunningClass, "act" | "undo" | "extend" | "ways" | "endOnTime">;

function actsOn(card: Card, latest: LatestLog, write: (next: FloorLog) => void): ActsOn {
  const plain = (type: PlainAct) => write([...latest.current, actEvent(card, latest.current, type, performance.now())]);
  return {
    act: plain,
    undo: () => {
      if (undoableAt(card, latest.current, performance.now())) plain("undo");
    },
    extend: (seconds) => {
      const made = extension(card, latest.current, seconds, performance.now());
      if (made) write([...latest.current, made.event]);
    },
    ways: () => waysAt(card, latest.current, performance.now()),
    endOnTime: (way) => {
      const made = wayEvent(card, latest.current, way, performance.now());
      if (made) write([...latest.current, made]);
    },
  };
}
