"use client";
/** Where everything stands on the rail: as the plan is, and as it would be when a drag ends here. */
import { useMemo } from "react";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { layoutRail, type RailItem, type RailLayout } from "#lib/rail/layout.ts";
import type { DragPreview } from "./use-rail-drag.ts";

interface Sizes {
  readonly snap: SessionSnapshot;
  /** Pixels a second. */
  readonly scale: number;
  /** Pixels that the words of a segment need. */
  readonly needs: Readonly<Record<string, number>>;
}

export function useStillLayout({ snap, scale, needs }: Sizes): RailLayout {
  const laid = useMemo(() => laidItems(snap, null), [snap]);
  const { lengthSeconds } = snap.plan;
  return useMemo(() => layoutRail({ ...laid, lengthSeconds, scale, needs }), [laid, lengthSeconds, scale, needs]);
}

export function usePreviewLayout(still: RailLayout, sizes: Sizes, preview: DragPreview | null): RailLayout {
  const { snap, scale, needs } = sizes;
  return useMemo(() => {
    if (preview?.kind !== "end") return still;
    return layoutRail({ ...laidItems(snap, preview), lengthSeconds: snap.plan.lengthSeconds, scale, needs });
  }, [snap, still, scale, needs, preview]);
}

function laidItems(snap: SessionSnapshot, preview: DragPreview | null): { items: RailItem[]; total: number } {
  let shift = 0;
  const items = snap.plan.items.flatMap((item, i): RailItem[] => {
    const row = snap.rows[i];
    if (!row) return [];
    const from = shift;
    if (preview?.kind === "end" && preview.id === item.id && item.kind !== "heading") {
      shift += preview.seconds - item.seconds;
    }
    const times = { transitionFrom: row.transitionFrom + from, start: row.start + from, end: row.end + shift };
    return [{ id: item.id, kind: item.kind, ...times }];
  });
  return { items, total: snap.total + shift };
}
