"use client";
/** The read-through by keyboard: Tab reaches one line, arrows go from line to line. The keys are listed in `plan-keys.ts`. */
import { type KeyboardEvent, useRef, useState } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import { type OwnCommand, PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import type { ReadPart } from "#lib/cues/read-through.ts";

export function useReading(parts: readonly ReadPart[]) {
  const box = useRef<HTMLDivElement>(null);
  const [spot, setSpot] = useState<string | null>(null);
  const { run } = usePageActs();
  const keys = parts.flatMap((part) => part.lines.map((line) => line.key));
  const current = spot !== null && keys.includes(spot) ? spot : (keys[0] ?? null);
  const focus = (key: string | undefined) => {
    if (key === undefined) return;
    const line = box.current?.querySelector<HTMLElement>(`[data-line="${CSS.escape(key)}"]`);
    line?.focus({ preventScroll: true });
    line?.scrollIntoView({ block: "nearest" });
  };
  const onKeyDown = (event: KeyboardEvent) =>
    keyHandler(PLAN_COMMANDS, "read", { run: { ...run, ...lineWalks(parts, keys, current, focus) } })(event);
  const onFocus = (event: { target: EventTarget }) => {
    if (event.target instanceof HTMLElement) setSpot(event.target.dataset.line ?? spot);
  };
  return { box, current, onKeyDown, onFocus };
}

function lineWalks(
  parts: readonly ReadPart[],
  keys: readonly string[],
  current: string | null,
  focus: (key: string | undefined) => void,
): Readonly<Record<OwnCommand<"read">, () => void>> {
  const at = keys.indexOf(current ?? "");
  const withLines = parts.filter((part) => part.lines.length > 0);
  const part = withLines.findIndex(({ lines }) => lines.some((line) => line.key === current));
  return {
    "line-after": () => focus(keys[at + 1]),
    "line-before": () => focus(keys[at - 1]),
    "first-line": () => focus(keys[0]),
    "last-line": () => focus(keys.at(-1)),
    "part-after": () => focus(withLines[part + 1]?.lines[0]?.key ?? keys.at(-1)),
    "part-before": () => focus(withLines[Math.max(0, part - 1)]?.lines[0]?.key),
  };
}
