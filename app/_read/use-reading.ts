"use client";
/** The read-through by keyboard: Tab reaches one line, arrows go from line to line. The keys are listed in `plan-keys.ts`. */
import { type KeyboardEvent, useRef, useState } from "react";
import type { ReadPart } from "#lib/cues/read-through.ts";

export interface ReadActs {
  readonly onRail: () => void;
  readonly onWhole: () => void;
}

export function useReading(parts: readonly ReadPart[], acts: ReadActs) {
  const box = useRef<HTMLDivElement>(null);
  const [spot, setSpot] = useState<string | null>(null);
  const keys = parts.flatMap((part) => part.lines.map((line) => line.key));
  const current = spot !== null && keys.includes(spot) ? spot : (keys[0] ?? null);
  const focus = (key: string | undefined) => {
    if (key === undefined) return;
    const line = box.current?.querySelector<HTMLElement>(`[data-line="${CSS.escape(key)}"]`);
    line?.focus({ preventScroll: true });
    line?.scrollIntoView({ block: "nearest" });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const act = otherAct(event.key, acts) ?? walk(event.key, parts, keys, current, focus);
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };
  const onFocus = (event: { target: EventTarget }) => {
    if (event.target instanceof HTMLElement) setSpot(event.target.dataset.line ?? spot);
  };
  return { box, current, onKeyDown, onFocus };
}

function otherAct(key: string, acts: ReadActs): (() => void) | undefined {
  switch (key.toLowerCase()) {
    case "r":
      return acts.onRail;
    case "w":
      return acts.onWhole;
    default:
      return undefined;
  }
}

function walk(
  key: string,
  parts: readonly ReadPart[],
  keys: readonly string[],
  current: string | null,
  focus: (key: string | undefined) => void,
): (() => void) | undefined {
  const at = keys.indexOf(current ?? "");
  const withLines = parts.filter((part) => part.lines.length > 0);
  const part = withLines.findIndex(({ lines }) => lines.some((line) => line.key === current));
  switch (key) {
    case "ArrowDown":
      return () => focus(keys[at + 1]);
    case "ArrowUp":
      return () => focus(keys[at - 1]);
    case "Home":
      return () => focus(keys[0]);
    case "End":
      return () => focus(keys.at(-1));
    case "PageDown":
      return () => focus(withLines[part + 1]?.lines[0]?.key ?? keys.at(-1));
    case "PageUp":
      return () => focus(withLines[Math.max(0, part - 1)]?.lines[0]?.key);
    default:
      return undefined;
  }
}
