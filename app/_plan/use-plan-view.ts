"use client";
/** Which view of the plan is open. It is part of the address, so it can be linked to, reloaded and gone back from. */
import { useCallback, useSyncExternalStore } from "react";

const OTHER_VIEWS = ["whole-class", "read-through", "rounds"] as const;
export type PlanView = "rail" | (typeof OTHER_VIEWS)[number];

const KEY = "view";
/** Our own event, since the browser has none for a push to the history. */
const PUSHED = "springline:view";

/** Read from the address directly: going through the router takes noticeably longer. */
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
