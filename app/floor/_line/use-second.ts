/** Draws again once a second: for sentences that say how long something has lasted. */
import { useEffect, useState } from "react";

export function useSecond(): void {
  const [, set] = useState(0);
  useEffect(() => {
    const tick = setInterval(() => set((n) => n + 1), 1000);
    return () => clearInterval(tick);
  }, []);
}
