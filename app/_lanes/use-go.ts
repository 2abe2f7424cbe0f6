"use client";
/** From the lanes to an item, or with null to the class as a whole. `open`: its panel takes the keyboard. */
import { usePageActs } from "#app/_session/page-acts.tsx";

export function useGo(): (item: string | null, open: boolean) => void {
  const { run, pick } = usePageActs();
  return (item, open) => {
    if (item === null) return run["show-class"]();
    pick(item);
    if (open) run["open-item"]();
  };
}
