"use client";
/**
 * Dragging on the rail with mouse, pen or finger: an item's lower end changes its seconds, the item itself changes its
 * place. While the hand moves only a preview is shown; the plan is written once, when it lets go. Escape leaves all as
 * it was.
 */
import { type PointerEvent, useEffect, useRef, useState } from "react";
import { headSeconds } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { draggedSeconds, dropAfter } from "#lib/rail/drag.ts";
import { type RailLayout, segmentOf } from "#lib/rail/layout.ts";
import { moveAfter, setSeconds } from "../_session/acts.ts";
import type { PlanSession } from "../_session/session.ts";

export type Preview =
  | { readonly kind: "end"; readonly id: string; readonly seconds: number }
  | { readonly kind: "place"; readonly id: string; readonly dy: number; readonly after: string | null };

/** Pixels a pointer may wander before a press becomes a drag. */
const SLACK_PX = 6;
/** Within this many pixels of the window's edge the page scrolls along. */
const EDGE_PX = 56;
const LONGEST_SECONDS = 3600;

interface Grip {
  readonly kind: "end" | "place";
  readonly item: PlanItem;
  readonly pageY: number;
  readonly pointerId: number;
  readonly target: Element;
  moved: boolean;
}

export interface RailDrag {
  readonly preview: Preview | null;
  readonly onGripDown: (kind: Grip["kind"], item: PlanItem, event: PointerEvent) => void;
  /** True right after a drag, when the click that ends it must not count as a click. */
  readonly wasDrag: () => boolean;
}

export function useRailDrag(session: PlanSession, plan: Plan, layout: RailLayout, scale: number): RailDrag {
  const [preview, setPreview] = useState<Preview | null>(null);
  const grip = useRef<Grip | null>(null);
  const dragged = useRef(false);
  // Drawn again on every move, so the listeners read what is newest through one ref.
  const now = useRef({ plan, layout, scale, preview });
  now.current = { plan, layout, scale, preview };

  useEffect(() => {
    const move = (event: globalThis.PointerEvent) => {
      const held = grip.current;
      if (!held || event.pointerId !== held.pointerId) return;
      const dy = event.pageY - held.pageY;
      if (!held.moved && Math.abs(dy) < SLACK_PX) return;
      if (!held.moved) held.target.setPointerCapture(held.pointerId);
      held.moved = true;
      event.preventDefault();
      scrollAtEdge(event.clientY);
      setPreview(previewOf(held, dy, now.current));
    };
    const end = (keep: boolean) => (event: globalThis.PointerEvent) => {
      if (grip.current?.pointerId !== event.pointerId) return;
      dragged.current = grip.current.moved;
      if (keep && grip.current.moved && now.current.preview) commit(session, grip.current.item, now.current.preview);
      grip.current = null;
      setPreview(null);
    };
    const cancel = (event: KeyboardEvent) => {
      if (event.key !== "Escape" || !grip.current) return;
      event.stopPropagation();
      grip.current = null;
      setPreview(null);
    };
    const up = end(true);
    const lost = end(false);
    addEventListener("pointermove", move, { passive: false });
    addEventListener("pointerup", up);
    addEventListener("pointercancel", lost);
    addEventListener("keydown", cancel, true);
    return () => {
      removeEventListener("pointermove", move);
      removeEventListener("pointerup", up);
      removeEventListener("pointercancel", lost);
      removeEventListener("keydown", cancel, true);
    };
  }, [session]);

  return {
    preview,
    onGripDown: (kind, item, event) => {
      dragged.current = false;
      if (event.button !== 0 || !session.canWrite) return;
      const { pageY, pointerId, currentTarget } = event;
      grip.current = { kind, item, pageY, pointerId, target: currentTarget, moved: false };
    },
    wasDrag: () => dragged.current,
  };
}

function previewOf(grip: Grip, dy: number, at: { plan: Plan; layout: RailLayout; scale: number }): Preview | null {
  const { item, kind } = grip;
  if (kind === "end") {
    if (item.kind === "heading") return null;
    const grid = headSeconds(at.plan, "gridSeconds");
    const bounds = { grid, shortest: grid, longest: LONGEST_SECONDS };
    return { kind, id: item.id, seconds: draggedSeconds({ seconds: item.seconds, dy, scale: at.scale, ...bounds }) };
  }
  const segment = segmentOf(at.layout, item.id);
  if (!segment) return null;
  const middle = segment.top + segment.height / 2 + dy;
  return { kind, id: item.id, dy, after: dropAfter(at.layout, item.id, middle) };
}

function commit(session: PlanSession, item: PlanItem, preview: Preview): void {
  if (preview.kind === "end") setSeconds(session, item, preview.seconds);
  else {
    session.select(item.id);
    moveAfter(session, item.id, preview.after);
  }
}

function scrollAtEdge(clientY: number): void {
  if (clientY < EDGE_PX + 90) scrollBy(0, -12);
  else if (clientY > innerHeight - EDGE_PX) scrollBy(0, 12);
}
