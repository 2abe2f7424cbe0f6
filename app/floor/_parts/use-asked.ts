/** A button that asks once more in the same place before it acts, and stops asking after a while. */
import { useEffect, useState } from "react";

const ASKED_FOR_MS = 6000;

/** Whether it is asking, and a way to make it ask. */
export function useAsked(): [asked: boolean, ask: () => void] {
  const [asked, setAsked] = useState(false);
  useEffect(() => {
    if (!asked) return;
    const over = setTimeout(() => setAsked(false), ASKED_FOR_MS);
    return () => clearTimeout(over);
  }, [asked]);
  return [asked, () => setAsked(true)];
}
