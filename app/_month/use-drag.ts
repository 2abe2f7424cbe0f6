"use client";
/** A class dragged along its rail to another time, or across the days to another one. Nothing is written before it is let go. */
import { type PointerEvent as ReactPointerEvent, useEffect, useRef } from "react";
import { commandOfKey } from "#app/_parts/commands/keys.ts";
import { draggedTo } from "#lib/tide/drag.ts";
import type { Moving } from "#lib/tide/preview.ts";
import { SHEET_COMMANDS } from "./month-commands.ts";
import type { MonthDesk } from "./month-desk.ts";
import type { MeasuredSheet } from "./sheet/use-sheet.ts";

/** Px that a hand may shake before it drags. */
const SHAKE = 5;

interface Grip {
  readonly slot: string;
  readonly x: number;
  readonly y: number;
  /** When the class began as it was gripped. */
  readonly start: string;
  moved: Moving | null;
}

interface Drag {
  grab(event: ReactPointerEvent<HTMLElement>, slot: string): void;
  /** Whether the press that just ended was a drag, and so no press. */
  wasDragged(): boolean;
}

/** Long because: one press, from grip to letting go, is one story. */
export function useDrag(desk: MonthDesk, measured: MeasuredSheet): Drag {
  const now = useRef({ desk, measured });
  now.current = { desk, measured };
  const grip = useRef<Grip | null>(null);
  const dragged = useRef(false);
  useEffect(() => {
    const listening = new AbortController();
    const on = <K extends keyof WindowEventMap>(type: K, listener: (event: WindowEventMap[K]) => void) =>
      addEventListener(type, listener, { signal: listening.signal, capture: true });
    const end = (keep: boolean) => {
      const held = grip.current;
      grip.current = null;
      // Only the click that belongs to this press is none: it follows at once, and only where the hand is still over the class.
      setTimeout(() => {
        dragged.current = false;
      });
      if (!held?.moved) return;
      if (keep) now.current.desk.acts.move(held.moved);
      now.current.desk.choose({ moving: null, at: { date: held.moved.date, slot: held.slot } });
    };
    on("pointermove", (event) => {
      const held = grip.current;
      const to = held && placeUnder(held, event, now.current.measured);
      if (!held || !to) return;
      event.preventDefault();
      dragged.current = true;
      if (held.moved?.date === to.date && held.moved.start === to.start) return;
      held.moved = to;
      now.current.desk.choose({ moving: to, lit: held.slot });
    });
    on("pointerup", () => end(true));
    on("pointercancel", () => end(false));
    on("keydown", (event) => {
      if (commandOfKey(SHEET_COMMANDS, "moving", event) !== "give-up" || !grip.current?.moved) return;
      event.stopPropagation();
      end(false);
    });
    return () => listening.abort();
  }, []);
  return {
    grab: (event, id) => {
      dragged.current = false;
      const slot = desk.slot(id);
      if (!slot || !desk.month.writes || event.button !== 0 || slot.out) return;
      grip.current = { slot: id, x: event.clientX, y: event.clientY, start: slot.start, moved: null };
    },
    wasDragged: () => {
      const was = dragged.current;
      dragged.current = false;
      return was;
    },
  };
}

/** Null while the hand has hardly moved. */
function placeUnder(held: Grip, event: PointerEvent, { sheet, tops, body }: MeasuredSheet): Moving | null {
  const [dx, dy] = [event.clientX - held.x, event.clientY - held.y];
  if (!held.moved && Math.hypot(dx, dy) < SHAKE) return null;
  const top = body.current?.getBoundingClientRect().top ?? 0;
  return draggedTo({ slot: held.slot, start: held.start, dx, y: event.clientY - top }, sheet, tops);
}
