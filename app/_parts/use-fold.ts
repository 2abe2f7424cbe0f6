"use client";
/** What opens under a button and lies over the page: a menu, boxes to tick. */
import { useEffect, useRef, useState } from "react";

/** Opens at its button; closes at Escape, or when the pointer or the focus goes elsewhere. */
export function useFold() {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (!open) return;
    const outside = (event: Event) => {
      if (event.target instanceof Node && !box.current?.contains(event.target)) setOpen(false);
    };
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      setOpen(false);
      button.current?.focus();
    };
    const listening = new AbortController();
    const { signal } = listening;
    document.addEventListener("pointerdown", outside, { signal });
    document.addEventListener("focusin", outside, { signal });
    document.addEventListener("keydown", onEscape, { signal });
    return () => listening.abort();
  }, [open]);
  return { open, toggle: () => setOpen(!open), box, button };
}
