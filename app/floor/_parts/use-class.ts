/**
 * A class in progress: its log, the view of this moment, and what the coach may do. The time is the browser's forward-only
 * clock; every change is kept on the device before anything else can happen to the page.
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
import { keep, keepLog, letGo, type Running } from "./kept.ts";
import { LOOK_MS, shownAt } from "./shown.ts";
import { newSessionId } from "./use-class-logs.ts";

/** The anchor of the clock is written again this often, so that only the time a page was away is read off the wall clock. */
const KEEP_MS = 5000;

export type Act = Exclude<PlainAct, "undo">;

export interface RunningClass {
  /** Events in ms of the browser's forward-only clock, and the session they are of. */
  readonly log: FloorLog;
  readonly sessionId: string;
  readonly view: FloorView;
  /** Seconds the device slept since it was last asked about it; 0 when it did not. */
  readonly sleptSeconds: number;
  /** The last touch, while it can be taken back; else null. */
  readonly undoable: Undoable | null;
  act(type: Act): void;
  /** Takes `undoable` back, the time that passed kept. */
  undo(): void;
  /** Can what is going on be made longer? Only a class that runs. */
  readonly canExtend: boolean;
  extend(seconds: number): void;
  /** How the class can be made to end on time now, and what each way costs. */
  ways(): Ways;
  /** Null takes the first. */
  endOnTime(way: WayId | null): void;
  /** Jumps ahead by what the device slept (true), or stays where the class is. */
  answerSleep(jump: boolean): void;
  /** Puts its log with those that wait for the studio: once, as it is then. Resolves when it is on disk. */
  file(): Promise<void>;
  /** Makes room for the next class; `files` its log first, unless that was done. */
  leave(files: boolean): Promise<void>;
}

export const bothClocks = () => ({ mono: performance.now(), wall: Date.now() });

/** The log a class begins with: its start now, or where it was when the page went away. */
const firstLog = (running: Running | null): FloorLog =>
  running ? rebaseLog(running.log, running.anchor, bothClocks()) : [{ type: "start", at: performance.now() }];

export function useClass(card: Card, envelope: CardEnvelope, running: Running | null): RunningClass {
  const [log, setLog] = useState<FloorLog>(() => firstLog(running));
  const [now, setNow] = useState(() => performance.now());
  const [sleptSeconds, setSlept] = useState(0);
  const [sessionId] = useState(() => running?.sessionId ?? newSessionId());
  const latest = useRef(log);
  const shown = useRef("");
  const filed = useRef<Promise<void> | null>(null);

  const file = useCallback(() => {
    filed.current ??= fileLog(card, latest.current, sessionId);
    return filed.current;
  }, [card, sessionId]);

  const write = useCallback(
    (next: FloorLog) => {
      latest.current = next;
      setLog(next);
      setNow(performance.now());
      keep("running", { envelope, log: next, anchor: bothClocks(), sessionId }).catch(() => undefined); // the class goes on without
    },
    [envelope, sessionId],
  );

  useEffect(() => {
    write(latest.current);
    let last = bothClocks();
    const look = () => {
      const is = bothClocks();
      const slept = sleptBetween(last, is);
      last = is;
      if (slept > 0) {
        setSlept((seconds) => seconds + slept / 1000);
        write(sleptLog(latest.current, is.mono, slept));
        return;
      }
      // What can be undone goes by the clock too, after the end as well.
      const undo = undoableAt(card, latest.current, is.mono);
      const shows = `${shownAt(card, latest.current, is.mono)} ${undo?.what} ${undo?.event.at}`;
      if (shows === shown.current) return;
      shown.current = shows;
      setNow(is.mono);
    };
    const tick = setInterval(look, LOOK_MS);
    // A throttled tab ticks once a second or less: it is right the moment it is looked at again.
    document.addEventListener("visibilitychange", look);
    const keeping = setInterval(() => {
      keep("running", { envelope, log: latest.current, anchor: bothClocks(), sessionId }).catch(() => undefined);
    }, KEEP_MS);
    return () => {
      clearInterval(tick);
      clearInterval(keeping);
      document.removeEventListener("visibilitychange", look);
    };
  }, [card, envelope, sessionId, write]);

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
    file,
    leave: async (files) => {
      // The log first: a page that goes away in between files the same session again.
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

function actsOn(card: Card, latest: { readonly current: FloorLog }, write: (next: FloorLog) => void): ActsOn {
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
