"use client";
/** Measures the slips and places them beside the rail. The first frame is in order already, and slips never overlap. */
import { useMemo } from "react";
import { useNeeds } from "#app/_parts/use-needs.ts";
import { placeSlips, type SlipWish } from "#lib/margin/place.ts";
import type { Slip } from "#lib/margin/slips.ts";
import { type RailLayout, segmentOf } from "#lib/rail/layout.ts";

/** Pixels between two slips. */
const GAP_PX = 10;
/** The height assumed for a slip that was not measured yet. */
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

/** The selected item's slips are placed at its height, whatever the others would like. */
const SELECTED_WEIGHT = 1000;

export function useSlipPlaces(
  slips: readonly Slip[],
  layout: RailLayout | null,
  selectedId: string | null,
): SlipPlaces {
  const { needs: heights, measure } = useNeeds();
  const headHeight = (heights[HEAD] ?? 0) + GAP_PX;
  const { places, height } = useMemo(() => {
    if (layout === null) return { places: new Map<string, number>(), height: 0 };
    const wishes = wishesOf(slips, layout, { top: headHeight, heights, selectedId });
    const placed = placeSlips(wishes, GAP_PX, headHeight);
    const last = placed.at(-1);
    const end = last ? last.top + (heights[last.id] ?? GUESS_PX) : headHeight;
    return { places: new Map(placed.map((p) => [p.id, p.top])), height: Math.ceil(end) };
  }, [slips, layout, heights, headHeight, selectedId]);
  return { places, height, headHeight, measure, measureHead: measure(HEAD) };
}

interface Wanting {
  /** Where slips about the whole plan are placed. */
  readonly top: number;
  readonly heights: Readonly<Record<string, number>>;
  readonly selectedId: string | null;
}

/** The first slip of an item wants to be at its item's top, the others under it. */
function wishesOf(slips: readonly Slip[], layout: RailLayout, { top, heights, selectedId }: Wanting): SlipWish[] {
  const next = new Map<string | null, number>();
  return slips.map((slip) => {
    const segment = slip.about === null ? undefined : segmentOf(layout, slip.about);
    const at = next.get(slip.about) ?? segment?.top ?? top;
    const height = heights[slip.id] ?? GUESS_PX;
    next.set(slip.about, at + height + GAP_PX);
    const weight = slip.about !== null && slip.about === selectedId ? SELECTED_WEIGHT : 1;
    return { id: slip.id, at, height, weight };
  });
}
