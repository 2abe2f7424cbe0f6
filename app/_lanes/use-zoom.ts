"use client";
/** How wide a second is in the whole class; kept on this device for each plan. */
import { useCallback, useState } from "react";
import { fitScale, scaleForTargets, ZOOM_STEPS, zoomed } from "#lib/lanes/axis.ts";

/** "fit": the whole class at once. */
type Zoom = number | "fit";

export interface ZoomState {
  readonly scale: number;
  readonly zoom: Zoom;
  readonly step: (by: 1 | -1) => void;
  readonly fit: () => void;
  readonly atMost: boolean;
}

interface ZoomInput {
  readonly planId: string;
  /** Seconds of the axis and of each item, and the pixels for them. */
  readonly seconds: number;
  readonly items: readonly number[];
  readonly width: number;
}

/** The width of a finger. On a touch screen the view begins so wide that most items can be hit, px. */
const FINGER_PX = 44;

export function useZoom({ planId, seconds, items, width }: ZoomInput): ZoomState {
  const key = `springline/zoom/${planId}`;
  const [chosen, setChosen] = useState<Zoom | null>(() => readZoom(key));
  const fit = fitScale(seconds, width);
  const zoom = chosen ?? (hasFingers() ? scaleForTargets(items, FINGER_PX, fit) : "fit");
  const choose = useCallback(
    (next: Zoom) => {
      setChosen(next);
      keepZoom(key, next);
    },
    [key],
  );
  return {
    scale: zoom === "fit" ? fit : Math.max(zoom, fit),
    zoom: zoom === "fit" || zoom <= fit ? "fit" : zoom,
    step: (by) => choose(zoomed(zoom, fit, by)),
    fit: () => choose("fit"),
    atMost: zoom !== "fit" && zoom >= (ZOOM_STEPS.at(-1) ?? 0),
  };
}

const hasFingers = (): boolean => matchMedia("(pointer: coarse)").matches;

function readZoom(key: string): Zoom | null {
  const stored = withStorage(() => localStorage.getItem(key));
  if (stored === "fit") return "fit";
  const scale = Number(stored);
  return ZOOM_STEPS.find((step) => step === scale) ?? null;
}

const keepZoom = (key: string, zoom: Zoom) => withStorage(() => localStorage.setItem(key, String(zoom)));

/** A browser that stores nothing (private mode) draws the usual width next time; nothing else is lost. */
function withStorage<T>(use: () => T): T | null {
  try {
    return use();
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}
