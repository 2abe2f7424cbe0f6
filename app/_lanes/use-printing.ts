"use client";
/** Whether the page is being printed just now: the whole class is drawn anew for the paper before it is. */
import { useEffect, useState } from "react";
import { flushSync } from "react-dom";

export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The paper is laid out as soon as these listeners return, so what is shown has to be there by then.
    const set = (on: boolean) => flushSync(() => setPrinting(on));
    const before = () => set(true);
    const after = () => set(false);
    const media = matchMedia("print");
    const change = () => set(media.matches);
    addEventListener("beforeprint", before);
    addEventListener("afterprint", after);
    media.addEventListener("change", change);
    return () => {
      removeEventListener("beforeprint", before);
      removeEventListener("afterprint", after);
      media.removeEventListener("change", change);
    };
  }, []);
  return printing;
}
