"use client";
/** Which view of the plan is open. It stands in the address, so that it can be linked, reloaded and gone back from. */
import { useCallback, useSyncExternalStore } from "react";

const OTHER_VIEWS = ["whole-class", "read-through"] as const;
export type PlanView = "rail" | (typeof OTHER_VIEWS)[number];

const KEY = "view";
/** A push to the history tells nobody; this does. */
const PUSHED = "springline:view";

/** The page reads its address itself: waiting for the router to have read it would be felt. */
export function usePlanView(): readonly [PlanView, (view: PlanView) => void] {
  const view = useSyncExternalStore(subscribe, viewNow, (): PlanView => "rail");
  const open = useCallback((next: PlanView) => {
    if (next === viewNow()) return;
    const address = new URL(location.href);
    if (next === "rail") address.searchParams.delete(KEY);
    else address.searchParams.set(KEY, next);
    history.pushState(null, "", address);
    dispatchEvent(new Event(PUSHED));
  }, []);
  return [view, open];
}

function viewNow(): PlanView {
  const asked = new URLSearchParams(location.search).get(KEY);
  return OTHER_VIEWS.find((view) => view === asked) ?? "rail";
}

function subscribe(onChange: () => void): () => void {
  for (const event of ["popstate", PUSHED]) addEventListener(event, onChange);
  return () => {
    for (const event of ["popstate", PUSHED]) removeEventListener(event, onChange);
  };
}
