"use client";
/** Opens what an address asks for ("?open=plan"), once: then it goes from the address, so that a reload asks for nothing. */
import { useSearchParams } from "next/navigation";
import { useEffect, useRef } from "react";

/** `open` is called when the page is opened with `?open=` and this name, or comes to be; it waits until it is `ready`. */
export function useAskedFor(name: string, open: () => void, ready = true): void {
  const asked = useSearchParams().get("open") === name && ready;
  const opening = useRef(open);
  useEffect(() => {
    opening.current = open;
  });
  useEffect(() => {
    if (!asked) return;
    history.replaceState(null, "", location.pathname + location.hash);
    opening.current();
  }, [asked]);
}
