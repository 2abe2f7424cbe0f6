"use client";
/**
 * Dragging on the rail with mouse, pen or finger: an item's lower end changes its seconds, the item itself changes its
 * place. While the hand moves only a preview is shown; the plan is written once, when it lets go. Escape writes nothing.
 */
import { type PointerEvent, useEffect, useRef, useState } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { draggedSeconds, dropAfter } from "#lib/rail/drag.ts";
import { type RailLayout, segmentOf } from "#lib/rail/layout.ts";
import { moveAfter, setItemSeconds } from "../_session/acts.ts";
import type { PlanSession } from "../_session/session.ts";

export type DragPreview =
  | { readonly kind: "end"; readonly id: string; readonly seconds: number }
  | { readonly kind: "place"; readonly id: string; readonly dy: number; readonly after: string | null };

/** How far a pointer moves before a press becomes a drag, px. */
const SLACK_PX = 6;
/** So near to the window's edge the page scrolls along, px. */
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
  readonly preview: DragPreview | null;
  readonly onGripDown: (kind: Grip["kind"], item: PlanItem, event: PointerEvent) => void;
  /** True right after a drag: the click that ends it does not count as one. */
  readonly wasDrag: () => boolean;
}

export function useRailDrag(session: PlanSession, plan: Plan, layout: RailLayout, scale: number): RailDrag {
  const [preview, setPreview] = useState<DragPreview | null>(null);
  const grip = useRef<Grip | null>(null);
  const wasDrag = useRef(false);
  // The listeners stay through a drag and read what is newest here.
  const now = useRef({ plan, layout, scale, preview });
  now.current = { plan, layout, scale, preview };

  useEffect(() => {
    const letGo = () => {
      grip.current = null;
      setPreview(null);
    };
    return listenToHand({
      onMove: (event) => {
        if (grip.current && hasMoved(grip.current, event)) {
          setPreview(previewOf(grip.current, event.pageY - grip.current.pageY, now.current));
        }
      },
      onEnd: (event, keep) => {
        const held = grip.current;
        if (held?.pointerId !== event.pointerId) return;
        wasDrag.current = held.moved;
        if (keep && held.moved && now.current.preview) commit(session, held.item, now.current.preview);
        letGo();
      },
      onKeyDown: (event) => {
        if (grip.current) keyHandler(PLAN_COMMANDS, "drag", { run: { "leave-drag": letGo } })(event);
      },
    });
  }, [session]);

  const onGripDown: RailDrag["onGripDown"] = (kind, item, event) => {
    wasDrag.current = false;
    if (event.button !== 0 || !session.canWrite) return;
    const { pageY, pointerId, currentTarget } = event;
    grip.current = { kind, item, pageY, pointerId, target: currentTarget, moved: false };
  };
  return { preview, onGripDown, wasDrag: () => wasDrag.current };
}

interface Hand {
  readonly onMove: (event: globalThis.PointerEvent) => void;
  /** `keep`: let go, and not taken away by the system. */
  readonly onEnd: (event: globalThis.PointerEvent, keep: boolean) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** On the window, since a hand leaves the item that it pulls. Returns the way to stop. */
function listenToHand({ onMove, onEnd, onKeyDown }: Hand): () => void {
  const up = (event: globalThis.PointerEvent) => onEnd(event, true);
  const lost = (event: globalThis.PointerEvent) => onEnd(event, false);
  addEventListener("pointermove", onMove, { passive: false });
  addEventListener("pointerup", up);
  addEventListener("pointercancel", lost);
  addEventListener("keydown", onKeyDown, true);
  return () => {
    removeEventListener("pointermove", onMove);
    removeEventListener("pointerup", up);
    removeEventListener("pointercancel", lost);
    removeEventListener("keydown", onKeyDown, true);
  };
}

/** A press becomes a drag once the pointer has gone far enough; then it is the item's until it is let go. */
function hasMoved(grip: Grip, event: globalThis.PointerEvent): boolean {
  if (event.pointerId !== grip.pointerId) return false;
  if (!grip.moved && Math.abs(event.pageY - grip.pageY) < SLACK_PX) return false;
  if (!grip.moved) grip.target.setPointerCapture(grip.pointerId);
  grip.moved = true;
  event.preventDefault();
  scrollAtEdge(event.clientY);
  return true;
}

function previewOf(grip: Grip, dy: number, at: { plan: Plan; layout: RailLayout; scale: number }): DragPreview | null {
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

function commit(session: PlanSession, item: PlanItem, preview: DragPreview): void {
  if (preview.kind === "end") setItemSeconds(session, item, preview.seconds);
  else {
    session.select(item.id);
    moveAfter(session, item.id, preview.after);
  }
}

function scrollAtEdge(clientY: number): void {
  if (clientY < EDGE_PX + 90) scrollBy(0, -12);
  else if (clientY > innerHeight - EDGE_PX) scrollBy(0, 12);
}
