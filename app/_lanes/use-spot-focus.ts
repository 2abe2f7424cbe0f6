"use client";
/** The keyboard and the view follow the cell that one walks to, and the item that is chosen elsewhere. */
import { type RefObject, useCallback, useEffect, useRef } from "react";
import type { CellSpot } from "#lib/lanes/walk.ts";
import { elementOf } from "./spots.ts";

/** Gives what asks for the focus on the next spot. */
export function useFocusOnSpot(grid: RefObject<HTMLDivElement | null>, spot: CellSpot | null): () => void {
  const wanted = useRef(false);
  useEffect(() => {
    if (!wanted.current) return;
    wanted.current = false;
    const cell = elementOf(grid.current, spot);
    cell?.focus({ preventScroll: true });
    cell?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }, [grid, spot]);
  return () => {
    wanted.current = true;
  };
}

/**
 * What is chosen elsewhere (a finding in the band, the balance) takes the keyboard next and is brought into view along
 * the axis; the page itself stays where the person is reading.
 */
export function useFollow(
  grid: RefObject<HTMLDivElement | null>,
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

/** Room left beside a cell at the right end of the view, px. */
const BESIDE_PX = 24;

/** Brings a cell into view in what scrolls sideways, clear of the lanes' names. */
function scrollAlong(cell: HTMLElement): void {
  const box = cell.closest<HTMLElement>("[data-scroll]");
  if (box === null) return;
  const gutter = Number.parseFloat(getComputedStyle(cell).scrollMarginLeft);
  const { left, right } = cell.getBoundingClientRect();
  const view = box.getBoundingClientRect();
  if (left < view.left + gutter) box.scrollLeft -= view.left + gutter - left;
  else if (right > view.right - BESIDE_PX) box.scrollLeft += right - view.right + BESIDE_PX;
}
