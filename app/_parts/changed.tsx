"use client";
/** "The plan changed while this was open": shown, and read aloud each time. */
import { useEffect, useRef } from "react";

interface ChangedProps {
  /** How often it has changed since the preview was opened. */
  readonly fresh: number;
  /** What is fresh now: "times below are fresh". */
  readonly what: string;
}

export function Changed({ fresh, what }: ChangedProps) {
  const ref = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    // The same sentence is read again only when it differs by something: a space that nobody sees.
    const again = fresh % 2 === 0 ? "\u00a0" : "";
    if (ref.current)
      ref.current.textContent = fresh > 0 ? `The plan changed while this was open: ${what}.${again}` : "";
  }, [fresh, what]);
  return <p ref={ref} role="status" className={fresh > 0 ? "notice" : "visually-hidden"} />;
}
