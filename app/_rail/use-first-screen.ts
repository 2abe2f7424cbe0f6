"use client";
/** What the rail draws first: as many plates as any screen shows; all the others once those are painted. */
import { startTransition, useEffect, useState } from "react";
import type { RailLayout, RailSegment } from "#lib/rail/layout.ts";

/** Of the least height they fill 1,400 px, changes between them included. */
const FIRST_ITEMS = 16;

/** The segments that are drawn. `all`: somebody is about to go to a place further down. */
export function useFirstScreen({ segments }: RailLayout, all: boolean): readonly RailSegment[] {
  const [whole, setWhole] = useState(all);
  useEffect(() => {
    startTransition(() => setWhole(true));
  }, []);
  if (whole || all) return segments;
  const items = segments.filter(({ key, item }) => key === item);
  const next = items[FIRST_ITEMS];
  return next === undefined ? segments : segments.slice(0, segments.indexOf(next));
}

/** A link to a thread, a line or another part of the plan. */
export const namesAPlace = (): boolean => location.hash !== "";
