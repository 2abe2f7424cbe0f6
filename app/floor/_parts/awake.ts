/** Keeps the screen on while a class runs. The lock is lost whenever the page is hidden, so it is taken again on return. */
import { useEffect, useState } from "react";

export type Awake = "asking" | "kept" | "refused" | "unknown-here";

export function useAwake(): Awake {
  const [state, setState] = useState<Awake>("asking");
  useEffect(() => {
    if (!("wakeLock" in navigator)) {
      setState("unknown-here");
      return;
    }
    let lock: WakeLockSentinel | undefined;
    let here = true;
    const take = async () => {
      if (document.visibilityState !== "visible") return;
      try {
        lock = await navigator.wakeLock.request("screen");
        if (here) setState("kept");
        else await lock.release();
      } catch {
        if (here) setState("refused"); // low battery, or the person's own setting
      }
    };
    document.addEventListener("visibilitychange", take);
    take();
    return () => {
      here = false;
      document.removeEventListener("visibilitychange", take);
      lock?.release().catch(() => undefined);
    };
  }, []);
  return state;
}
