"use client";
/** Measures the slips and places them beside the rail. The first frame stands in order; nothing ever overlaps. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { placeSlips, type SlipWish } from "#lib/margin/place.ts";
import type { Slip } from "#lib/margin/slips.ts";
import { type RailLayout, segmentOf } from "#lib/rail/layout.ts";

/** Pixels between two slips. */
const GAP_PX = 10;
/** A slip that was not measured yet. */
const GUESS_PX = 96;
const HEAD = "head";

export interface SlipPlaces {
  /** Slip id -> top in pixels from the margin's top. */
  readonly places: ReadonlyMap<string, number>;
  readonly height: number;
  readonly headHeight: number;
  readonly measure: (id: string) => (element: HTMLElement | null) => void;
  readonly measureHead: (element: HTMLElement | null) => void;
}

/** The selected item's slips stand at its height whatever the others want. */
const SELECTED_WEIGHT = 1000;

export function useSlipPlaces(
  slips: readonly Slip[],
  layout: RailLayout | null,
  selectedId: string | null,
): SlipPlaces {
  const { heights, measure } = useHeights();
  const headHeight = (heights.get(HEAD) ?? 0) + GAP_PX;
  const { places, height } = useMemo(() => {
    if (layout === null) return { places: new Map<string, number>(), height: 0 };
    const wishes = wishesOf(slips, layout, { top: headHeight, heights, selectedId });
    const placed = placeSlips(wishes, GAP_PX, headHeight);
    const last = placed.at(-1);
    const end = last ? last.top + (heights.get(last.id) ?? GUESS_PX) : headHeight;
    return { places: new Map(placed.map((p) => [p.id, p.top])), height: Math.ceil(end) };
  }, [slips, layout, heights, headHeight, selectedId]);
  return { places, height, headHeight, measure, measureHead: measure(HEAD) };
}

interface Wanting {
  /** Where slips about the whole plan would stand. */
  readonly top: number;
  readonly heights: ReadonlyMap<string, number>;
  readonly selectedId: string | null;
}

/** The first slip of an item would like to stand at its item's top, the others under it. */
function wishesOf(slips: readonly Slip[], layout: RailLayout, { top, heights, selectedId }: Wanting): SlipWish[] {
  const next = new Map<string | null, number>();
  return slips.map((slip) => {
    const segment = slip.about === null ? undefined : segmentOf(layout, slip.about);
    const at = next.get(slip.about) ?? segment?.top ?? top;
    const height = heights.get(slip.id) ?? GUESS_PX;
    next.set(slip.about, at + height + GAP_PX);
    const weight = slip.about !== null && slip.about === selectedId ? SELECTED_WEIGHT : 1;
    return { id: slip.id, at, height, weight };
  });
}

function useHeights() {
  const [heights, setHeights] = useState<ReadonlyMap<string, number>>(new Map());
  const observer = useRef<ResizeObserver | null>(null);
  const keys = useRef(new Map<Element, string>());
  const refs = useRef(new Map<string, (element: HTMLElement | null) => void>());

  useEffect(() => {
    const own = new ResizeObserver((entries) => {
      setHeights((now) => {
        const next = new Map(now);
        let changed = false;
        for (const entry of entries) {
          const key = keys.current.get(entry.target);
          const height = Math.ceil(entry.borderBoxSize[0]?.blockSize ?? 0);
          if (key === undefined || next.get(key) === height) continue;
          next.set(key, height);
          changed = true;
        }
        return changed ? next : now;
      });
    });
    observer.current = own;
    for (const element of keys.current.keys()) own.observe(element);
    return () => own.disconnect();
  }, []);

  const measure = useCallback((key: string) => {
    const known = refs.current.get(key);
    if (known) return known;
    let held: HTMLElement | null = null;
    const ref = (element: HTMLElement | null) => {
      if (held !== null) {
        observer.current?.unobserve(held);
        keys.current.delete(held);
      }
      held = element;
      if (element === null) return;
      keys.current.set(element, key);
      observer.current?.observe(element);
    };
    refs.current.set(key, ref);
    return ref;
  }, []);
  return { heights, measure };
}
