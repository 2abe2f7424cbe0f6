"use client";
/** Which view of the plan is open. It stands in the address, so that it can be linked, reloaded and gone back from. */
import { useSearchParams } from "next/navigation";
import { useCallback } from "react";

export type PlanView = "rail" | "whole-class";

const KEY = "view";

export function usePlanView(): readonly [PlanView, (view: PlanView) => void] {
  const view: PlanView = useSearchParams().get(KEY) === "whole-class" ? "whole-class" : "rail";
  const open = useCallback((next: PlanView) => {
    const address = new URL(location.href);
    if (next === "rail") address.searchParams.delete(KEY);
    else address.searchParams.set(KEY, next);
    if (address.href !== location.href) history.pushState(null, "", address);
  }, []);
  return [view, open];
}
