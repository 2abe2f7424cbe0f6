"use client";
/** Where the focus goes when what had it is gone from the page: to what stands in for it, so that keys go on working. */
import { type RefObject, useEffect, useLayoutEffect, useRef } from "react";

/** `standIn`: of an element within `box` that had the focus and is gone; nothing where the focus may fall. */
export function useKeptFocus(
  box: RefObject<HTMLElement | null>,
  standIn: (gone: HTMLElement) => HTMLElement | null | undefined,
): void {
  const held = useRef<HTMLElement | null>(null);
  useEffect(() => {
    const listening = new AbortController();
    const options = { signal: listening.signal };
    const on = (target: EventTarget | null) =>
      target instanceof HTMLElement && box.current?.contains(target) ? target : null;
    document.addEventListener(
      "focusin",
      ({ target }) => {
        held.current = on(target);
      },
      options,
    );
    // What is taken out of the page loses the focus as well; only what is still there a moment later was left on purpose.
    document.addEventListener(
      "focusout",
      ({ target }) =>
        setTimeout(() => {
          if (held.current === target && held.current?.isConnected && document.activeElement !== target)
            held.current = null;
        }),
      options,
    );
    return () => listening.abort();
  }, [box]);
  useLayoutEffect(() => {
    const gone = held.current;
    if (gone && !gone.isConnected && document.activeElement === document.body) standIn(gone)?.focus();
  });
}
