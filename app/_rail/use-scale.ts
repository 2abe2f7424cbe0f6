"use client";
/** How tall a second is on the rail; kept on this device for each plan. */
import { useState } from "react";

export interface RailScale {
  /** Pixels a second. */
  readonly pixels: number;
  readonly step: (by: 1 | -1) => void;
  readonly isLowest: boolean;
  readonly isHighest: boolean;
}

/** Pixels a second: from the whole class at a glance to the single repetition. */
const SCALES = [0.4, 0.6, 0.85, 1.1, 1.5, 2.2, 3.2] as const;
const USUAL = 2;

export function useScale(planId: string): RailScale {
  const key = `springline/scale/${planId}`;
  const [at, setAt] = useState(() => readStep(key));
  const step = (by: 1 | -1) => {
    const next = Math.min(SCALES.length - 1, Math.max(0, at + by));
    setAt(next);
    try {
      localStorage.setItem(key, String(next));
    } catch (error) {
      // A browser that stores nothing (private mode) draws the usual scale next time; nothing else is lost.
      if (!(error instanceof DOMException)) throw error;
    }
  };
  return { pixels: SCALES[at] ?? SCALES[USUAL], step, isLowest: at === 0, isHighest: at === SCALES.length - 1 };
}

function readStep(key: string): number {
  try {
    const stored = Number(localStorage.getItem(key) ?? USUAL);
    return Number.isInteger(stored) && stored >= 0 && stored < SCALES.length ? stored : USUAL;
  } catch (error) {
    if (error instanceof DOMException) return USUAL;
    throw error;
  }
}
