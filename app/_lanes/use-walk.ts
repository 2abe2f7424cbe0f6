"use client";
/**
 * The lanes by keyboard, hand and eye: which cell takes the keyboard, which one the pointer is over, and what a key or a
 * press does. There are many cells, so the listeners are the grid's and find the cell from the event.
 */
import { type FocusEvent, type MouseEvent, useRef, useState } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import { type OwnCommand, PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import type { Axis } from "#lib/lanes/axis.ts";
import type { ClassLanes } from "#lib/lanes/types.ts";
import { type CellSpot, cellAt, type WalkKey, walk } from "#lib/lanes/walk.ts";
import { columnAt, spotAt } from "./spots.ts";
import { useGo } from "./use-go.ts";
import { useFocusOnSpot, useFollow } from "./use-spot-focus.ts";

const WALKS = {
  "cell-left": "left",
  "cell-right": "right",
  "lane-up": "up",
  "lane-down": "down",
  "first-cell": "home",
  "last-cell": "end",
  "first-lane": "top",
  "last-lane": "bottom",
} as const satisfies Partial<Record<OwnCommand<"lanes">, WalkKey>>;

type ZoomCommand = "wider" | "narrower" | "all-in-view";
export type ZoomRun = Readonly<Record<ZoomCommand, () => void>>;

export interface Lanes {
  readonly lanes: ClassLanes;
  readonly axis: Axis;
  readonly selected: string | null;
}

export function useWalk({ lanes, axis, selected }: Lanes, zoom: ZoomRun) {
  const [spot, setSpot] = useState<CellSpot | null>(() =>
    selected === null ? null : { lane: "work", cell: selected },
  );
  const [over, setOver] = useState<CellSpot | null>(null);
  const here = cellAt(lanes.lanes, spot);
  const grid = useRef<HTMLDivElement>(null);
  const { run } = usePageActs();
  const go = useGo();
  const focusNext = useFocusOnSpot(grid, spot);
  useFollow(grid, selected, setSpot);

  const walkTo = (key: WalkKey) => {
    focusNext();
    setSpot(walk(lanes.lanes, spot, key));
  };
  const cell = {
    "open-cell": () => here && go(here.cell.item, true),
    "choose-cell": () => here && go(here.cell.item, false),
  };
  const onClick = (event: MouseEvent) => {
    const pressed = spotAt(event.target);
    if (pressed) setSpot(pressed);
    const found = pressed ? cellAt(lanes.lanes, pressed)?.cell : columnAt(lanes.columns, axis, event);
    if (found) go(found.item, false);
  };
  return {
    grid,
    here,
    over: (over && cellAt(lanes.lanes, over)) ?? here,
    onKeyDown: keyHandler(PLAN_COMMANDS, "lanes", { run: { ...run, ...zoom, ...cell, ...walks(walkTo) } }),
    onClick,
    onFocus: (event: FocusEvent) => setSpot(spotAt(event.target) ?? spot),
    onPointerOver: (event: { target: EventTarget }) => setOver(spotAt(event.target)),
    onPointerLeave: () => setOver(null),
  };
}

/** One function for each command that walks from cell to cell. */
function walks(walkTo: (key: WalkKey) => void): Readonly<Record<keyof typeof WALKS, () => void>> {
  const ways = Object.entries(WALKS).map(([command, key]) => [command, () => walkTo(key)] as const);
  return Object.fromEntries(ways) as Record<keyof typeof WALKS, () => void>; // as many as `WALKS` has
}
