"use client";
/**
 * The lanes by keyboard, hand and eye: which cell takes the keyboard, which one the pointer is over, and what a key or a
 * press does. The grid's cells are many, so its listeners stand on the grid and find the cell from the event.
 */
import { type FocusEvent, type KeyboardEvent, type MouseEvent, useCallback, useEffect, useRef, useState } from "react";
import type { Axis } from "#lib/lanes/axis.ts";
import type { ClassLanes, LaneColumn } from "#lib/lanes/types.ts";
import { type CellSpot, cellAt, type WalkKey, walk } from "#lib/lanes/walk.ts";

export interface WalkActs {
  /** Goes to an item; null: to the class as a whole. `open`: the person asked to work on it, the panel takes the focus. */
  readonly onGo: (item: string | null, open: boolean) => void;
  readonly onZoom: (by: 1 | -1 | 0) => void;
  readonly onRail: () => void;
  readonly onRead: () => void;
  readonly onShut: () => void;
}

const WALK_KEYS: Readonly<Record<string, WalkKey>> = {
  ArrowLeft: "left",
  ArrowRight: "right",
  ArrowUp: "up",
  ArrowDown: "down",
  Home: "home",
  End: "end",
  PageUp: "top",
  PageDown: "bottom",
};

export function useWalk(lanes: ClassLanes, axis: Axis, selected: string | null, acts: WalkActs) {
  const [spot, setSpot] = useState<CellSpot | null>(() =>
    selected === null ? null : { lane: "work", cell: selected },
  );
  const [over, setOver] = useState<CellSpot | null>(null);
  const here = cellAt(lanes.lanes, spot);
  const grid = useRef<HTMLDivElement>(null);
  const goFocus = useRef(false);
  useFollow(grid, selected, setSpot);

  useEffect(() => {
    if (!goFocus.current) return;
    goFocus.current = false;
    const cell = elementOf(grid.current, spot);
    cell?.focus({ preventScroll: true });
    cell?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }, [spot]);

  const onKeyDown = (event: KeyboardEvent) => {
    const act = keyAct(event, { ...acts, go: (open) => here && acts.onGo(here.cell.item, open) }, (key) => {
      goFocus.current = true;
      setSpot(walk(lanes.lanes, spot, key));
    });
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };
  const onClick = (event: MouseEvent) => {
    const pressed = spotAt(event.target);
    if (pressed) setSpot(pressed);
    const found = pressed ? cellAt(lanes.lanes, pressed)?.cell : columnAt(lanes.columns, axis, event);
    if (found) acts.onGo(found.item, false);
  };
  return {
    grid,
    here,
    over: useHere(lanes, over) ?? here,
    onKeyDown,
    onClick,
    onFocus: (event: FocusEvent) => setSpot(spotAt(event.target) ?? spot),
    onPointerOver: (event: { target: EventTarget }) => setOver(spotAt(event.target)),
    onPointerLeave: () => setOver(null),
  };
}

const useHere = (lanes: ClassLanes, spot: CellSpot | null) => (spot === null ? null : cellAt(lanes.lanes, spot));

interface KeyActs extends WalkActs {
  readonly go: (open: boolean) => void;
}

function keyAct(event: KeyboardEvent, acts: KeyActs, go: (key: WalkKey) => void): (() => void) | undefined {
  if (event.altKey || event.ctrlKey || event.metaKey) return undefined;
  const key = WALK_KEYS[event.key];
  if (key) return () => go(key);
  switch (event.key) {
    case "Enter":
      return () => acts.go(true);
    case " ":
      return () => acts.go(false);
    case "+":
    case "=":
      return () => acts.onZoom(1);
    case "-":
      return () => acts.onZoom(-1);
    case "0":
      return () => acts.onZoom(0);
    case "Escape":
      return acts.onShut;
    case "w":
    case "W":
      return acts.onRail;
    case "r":
    case "R":
      return acts.onRead;
    default:
      return undefined;
  }
}

/**
 * What is chosen elsewhere (a finding in the band, the balance) takes the keyboard next and is brought into view along
 * the axis; the page itself stays where the person is reading.
 */
function useFollow(
  grid: React.RefObject<HTMLDivElement | null>,
  selected: string | null,
  setSpot: (next: (now: CellSpot | null) => CellSpot | null) => void,
): void {
  const follow = useCallback(
    (item: string) => {
      setSpot((now) => (now?.cell === item ? now : { lane: "work", cell: item }));
      const cell = elementOf(grid.current, { lane: "work", cell: item });
      if (cell) scrollAlong(cell);
    },
    [grid, setSpot],
  );
  useEffect(() => {
    if (selected !== null) follow(selected);
  }, [selected, follow]);
}

/** Brings a cell into view in what scrolls sideways, clear of the lanes' names. */
function scrollAlong(cell: HTMLElement): void {
  const box = cell.closest<HTMLElement>("[data-scroll]");
  if (box === null) return;
  const gutter = Number.parseFloat(getComputedStyle(cell).scrollMarginLeft);
  const { left, right } = cell.getBoundingClientRect();
  const view = box.getBoundingClientRect();
  if (left < view.left + gutter) box.scrollLeft -= view.left + gutter - left;
  else if (right > view.right - EDGE_PX) box.scrollLeft += right - view.right + EDGE_PX;
}

const EDGE_PX = 24;

function spotAt(target: EventTarget): CellSpot | null {
  const element = target instanceof Element ? target.closest<HTMLElement>("[data-cell]") : null;
  const { lane, cell } = element?.dataset ?? {};
  return lane !== undefined && cell !== undefined ? { lane, cell } : null;
}

export function elementOf(grid: HTMLElement | null, spot: CellSpot | null): HTMLElement | null {
  if (grid === null || spot === null) return null;
  const { lane, cell } = spot;
  return grid.querySelector(`[data-lane="${CSS.escape(lane)}"][data-cell="${CSS.escape(cell)}"]`);
}

/** A press on an empty spot of a lane goes to what is done at that time. */
function columnAt(columns: readonly LaneColumn[], axis: Axis, event: MouseEvent): LaneColumn | undefined {
  const track = event.target instanceof Element ? event.target.closest<HTMLElement>("[role=presentation]") : null;
  if (!track) return undefined;
  const second = (event.clientX - track.getBoundingClientRect().left) / axis.scale;
  return columns.find((column) => column.gapFrom <= second && second < column.to);
}
