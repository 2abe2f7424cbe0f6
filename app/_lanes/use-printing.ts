"use client";
/** Whether the page is being printed: the whole class is then drawn for paper. */
import { useEffect, useState } from "react";
import { flushSync } from "react-dom";

export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The browser lays out the paper when these listeners return, so React has to draw before.
    const set = (on: boolean) => flushSync(() => setPrinting(on));
    const media = matchMedia("print");
    let asked = false;
    const ask = (on: boolean) => {
      asked = on;
      set(on);
    };
    const before = () => ask(true);
    const after = () => ask(false);
    // Chromium may tell of a change to the screen between "beforeprint" and the paper: what was drawn for paper stays.
    const change = () => set(asked || media.matches);
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
