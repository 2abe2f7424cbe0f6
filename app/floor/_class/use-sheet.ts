/** The sheet that a coach opened over the class, which also closes by itself (`lib/floor/sheet.ts` says when). */
import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { CLOSED_WORDS, SHEET_UNTOUCHED_MS, type SheetClosing, sheetCloses, sheetMoment } from "#lib/floor/sheet.ts";
import type { FloorView } from "#lib/floor/view.ts";

/** "withdrawn" is not opened by anybody: it asks until it is answered. */
type ClassSheet = "on-time" | "help" | "withdrawn";

const TOUCHES = ["pointerdown", "keydown", "wheel", "touchmove"] as const;
/** How long the screen says that it closed; the next touch ends that too. */
const SAID_MS = 8000;

export interface OpenSheet {
  readonly sheet: ClassSheet | null;
  /** For a while after it closed by itself: that it did, in words; else null. */
  readonly closed: string | null;
  set(sheet: ClassSheet | null): void;
}

export function useSheet(view: FloorView): OpenSheet {
  const [sheet, setSheet] = useState<ClassSheet | null>(null);
  const [closed, setClosed] = useState<string | null>(null);
  const moment = sheetMoment(view);
  const was = useRef(moment);
  const { item, phase, headsUp } = moment;
  const close = (why: SheetClosing) => {
    setSheet(null);
    if (sheet === "on-time") setClosed(CLOSED_WORDS[why]);
  };
  const closing = useRef(close);
  closing.current = close;

  // Before anything is painted: a sheet never covers a change, not even for a frame.
  useLayoutEffect(() => {
    const is = { item, phase, headsUp };
    const why = sheet && sheetCloses(was.current, is, 0);
    was.current = is;
    if (why) closing.current(why);
  }, [sheet, item, phase, headsUp]);
  useUntouched(sheet !== null, SHEET_UNTOUCHED_MS, () => closing.current("untouched"), true);
  useUntouched(closed !== null, SAID_MS, () => setClosed(null), false);

  return {
    sheet,
    closed,
    set: (next) => {
      setClosed(null);
      setSheet(next);
    },
  };
}

/** Runs `then` once while `on`, after `ms` without a touch; a touch starts the time again (`again`) or runs it at once. */
function useUntouched(on: boolean, ms: number, then: () => void, again: boolean): void {
  const run = useRef(then);
  run.current = then;
  useEffect(() => {
    if (!on) return;
    let timer = setTimeout(() => run.current(), ms);
    const touched = () => {
      clearTimeout(timer);
      if (again) timer = setTimeout(() => run.current(), ms);
      else run.current();
    };
    for (const touch of TOUCHES) addEventListener(touch, touched, { capture: true, passive: true });
    return () => {
      clearTimeout(timer);
      for (const touch of TOUCHES) removeEventListener(touch, touched, { capture: true });
    };
  }, [on, ms, again]);
}
