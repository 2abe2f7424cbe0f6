"use client";
/**
 * Keeps one moment of the class in its place while the width changes: the one under the pointer for a wheel with Ctrl (a
 * browser sends two fingers on a trackpad as that), else the one in the middle.
 */
import { type RefObject, useEffect, useLayoutEffect, useRef } from "react";

interface Kept {
  readonly scale: number;
  readonly gutter: number;
  readonly onPinch: (by: 1 | -1) => void;
}

/** Wheel units for one step. */
const STEP = 40;

export function useScrollKept(box: RefObject<HTMLElement | null>, { scale, gutter, onPinch }: Kept): void {
  const before = useRef(scale);
  /** Where the moment that stays is, from the left end of the axis in view, px. */
  const anchor = useRef<number | null>(null);
  const pinch = useRef(onPinch);
  pinch.current = onPinch;

  useLayoutEffect(() => {
    const element = box.current;
    if (element === null || before.current === scale) return;
    const at = anchor.current ?? (element.clientWidth - gutter) / 2;
    const second = (element.scrollLeft + at) / before.current;
    element.scrollLeft = second * scale - at;
    before.current = scale;
    anchor.current = null;
  }, [box, scale, gutter]);

  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    let gathered = 0;
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      gathered += event.deltaY;
      if (Math.abs(gathered) < STEP) return;
      anchor.current = Math.max(0, event.clientX - element.getBoundingClientRect().left - gutter);
      pinch.current(gathered < 0 ? 1 : -1);
      gathered = 0;
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [box, gutter]);
}
