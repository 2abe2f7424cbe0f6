"use client";
/** Which item of the rail has the focus, and which is in view. */
import { useEffect, useRef } from "react";
import { bringIntoView } from "./bring-into-view.ts";

/**
 * The focus goes with the chosen item while it is on the rail, even if the item it was on has just gone, and is never taken
 * from anywhere else. An item that is chosen elsewhere is scrolled into view.
 */
export function useFocusFollows(list: React.RefObject<HTMLDivElement | null>, selectedId: string | null): void {
  const wasInside = useRef(false);
  useEffect(() => {
    const note = (event: FocusEvent) => {
      wasInside.current = event.target instanceof Node && list.current?.contains(event.target) === true;
    };
    addEventListener("focusin", note);
    return () => removeEventListener("focusin", note);
  }, [list]);
  useEffect(() => {
    const box = list.current;
    if (!box || selectedId === null) return;
    const option = box.querySelector<HTMLElement>(`[data-item="${CSS.escape(selectedId)}"]`);
    const focusIsFree = document.activeElement === document.body && wasInside.current;
    if (focusIsFree || box.contains(document.activeElement)) option?.focus({ preventScroll: true });
    // By keys, what stands over the first item is seen with it: the tools and the opening.
    if (option?.matches(":first-child:focus-visible")) scrollTo({ top: 0 });
    else if (option) bringIntoView(option);
  }, [list, selectedId]);
}
