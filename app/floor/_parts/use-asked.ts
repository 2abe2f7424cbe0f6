/** A target that asks once more, in the same place, and forgets that it was asked after a while. */
import { useEffect, useState } from "react";

const ASKED_FOR_MS = 6000;

/** Whether it was asked, and a way to ask. */
export function useAsked(): [asked: boolean, ask: () => void] {
  const [asked, setAsked] = useState(false);
  useEffect(() => {
    if (!asked) return;
    const over = setTimeout(() => setAsked(false), ASKED_FOR_MS);
    return () => clearTimeout(over);
  }, [asked]);
  return [asked, () => setAsked(true)];
}
