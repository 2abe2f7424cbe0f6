"use client";
/** What the rail draws first: as many plates as this screen shows; all the others once those are painted. */
import { startTransition, useEffect, useState } from "react";
import type { RailLayout, RailSegment } from "#lib/rail/layout.ts";

/** An item and the change into it, px: most take more, the shortest on a laptop 75. */
const LEAST_ITEM_PX = 75;

/** The segments that are drawn. `all`: somebody is about to go to a place further down. */
export function useFirstScreen({ segments }: RailLayout, all: boolean): readonly RailSegment[] {
  const [whole, setWhole] = useState(all);
  useEffect(() => {
    startTransition(() => setWhole(true));
  }, []);
  if (whole || all) return segments;
  const items = segments.filter(({ key, item }) => key === item);
  const next = items[Math.ceil(innerHeight / LEAST_ITEM_PX)];
  return next === undefined ? segments : segments.slice(0, segments.indexOf(next));
}

/** A link to a thread, a line or another part of the plan. */
export const namesAPlace = (): boolean => location.hash !== "";
