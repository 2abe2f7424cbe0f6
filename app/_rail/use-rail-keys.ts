"use client";
/** The rail by keyboard: everything a hand can do there. Keys are listed for the reader in `plan-keys.ts`. */
import type { KeyboardEvent } from "react";
import { headSeconds } from "#lib/plan/lookup.ts";
import type { PlanItem } from "#lib/plan/schema.ts";
import { steppedSeconds } from "#lib/rail/drag.ts";
import { duplicate, moveBy, setSeconds, takeOut } from "../_session/acts.ts";
import type { PlanSession } from "../_session/session.ts";

export interface RailKeyActs {
  readonly openPanel: () => void;
  readonly openAdd: () => void;
  readonly openWhole: () => void;
  readonly openRead: () => void;
}

export function useRailKeys(session: PlanSession, acts: RailKeyActs) {
  return (event: KeyboardEvent): void => {
    const handler = event.altKey ? altKey(session, event) : plainKey(session, event, acts);
    if (!handler) return;
    event.preventDefault();
    event.stopPropagation();
    handler();
  };
}

type Handler = (() => void) | undefined;

function altKey(session: PlanSession, event: KeyboardEvent): Handler {
  const { selectedId } = session.getSnapshot();
  if (selectedId === null) return undefined;
  if (event.key === "ArrowUp") return () => moveBy(session, selectedId, -1);
  if (event.key === "ArrowDown") return () => moveBy(session, selectedId, 1);
  return undefined;
}

function plainKey(session: PlanSession, event: KeyboardEvent, acts: RailKeyActs): Handler {
  const item = selectedItem(session);
  if (event.ctrlKey || event.metaKey) {
    return event.key.toLowerCase() === "d" && item ? () => duplicate(session, item) : undefined;
  }
  switch (event.key) {
    case "ArrowDown":
      return () => step(session, 1);
    case "ArrowUp":
      return () => step(session, -1);
    case "Home":
      return () => session.select(session.getSnapshot().plan.items[0]?.id ?? null);
    case "End":
      return () => session.select(session.getSnapshot().plan.items.at(-1)?.id ?? null);
    case "a":
    case "A":
      return acts.openAdd;
    case "w":
    case "W":
      return acts.openWhole;
    case "r":
    case "R":
      return acts.openRead;
    default:
      return item ? itemKey(session, item, event.key, acts) : undefined;
  }
}

function itemKey(session: PlanSession, item: PlanItem, key: string, acts: RailKeyActs): Handler {
  switch (key) {
    case "Enter":
    case " ":
      return acts.openPanel;
    case "+":
    case "=":
      return () => stepSeconds(session, item, 1);
    case "-":
      return () => stepSeconds(session, item, -1);
    case "Delete":
    case "Backspace":
      return () => takeOut(session, item);
    default:
      return undefined;
  }
}

/** One step of the plan's grid longer or shorter. */
export function stepSeconds(session: PlanSession, item: PlanItem, by: 1 | -1): void {
  if (item.kind === "heading") return;
  const grid = headSeconds(session.getSnapshot().plan, "gridSeconds");
  setSeconds(session, item, steppedSeconds(item.seconds, by, grid));
}

function selectedItem(session: PlanSession): PlanItem | undefined {
  const { plan, selectedId } = session.getSnapshot();
  return plan.items.find((item) => item.id === selectedId);
}

function step(session: PlanSession, by: 1 | -1): void {
  const { plan, selectedId } = session.getSnapshot();
  const at = plan.items.findIndex((item) => item.id === selectedId);
  const next = at < 0 ? plan.items[0] : plan.items[at + by];
  if (next) session.select(next.id);
}
