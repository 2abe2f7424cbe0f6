/** Listens to keys, pedals and presenters, and says which act was meant. */
import { useLayoutEffect, useRef } from "react";
import { actOfKey, type KeyAct, type KeyChoice, steadyTaps } from "#lib/floor/keys.ts";

/** Enter belongs to a focused button; a button that was touched has given up its focus. */
const isForButton = (event: KeyboardEvent): boolean =>
  event.key === "Enter" && event.target instanceof HTMLElement && event.target.closest("button, a, select") !== null;

/**
 * One press, one act: a key that is held down does not repeat. Space never presses a focused button here. Listens from the
 * first frame on, so that a class can be held as soon as it is seen.
 */
export function useFloorKeys(chosen: KeyChoice, onAct: (act: KeyAct) => void): void {
  const latest = useRef({ chosen, onAct });
  latest.current = { chosen, onAct };
  useLayoutEffect(() => {
    const counts = steadyTaps();
    const down = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isForButton(event)) return;
      const act = actOfKey(event.key, latest.current.chosen);
      if (!act) return;
      event.preventDefault();
      if (!event.repeat && counts(act, performance.now())) latest.current.onAct(act);
    };
    const up = (event: KeyboardEvent) => {
      if (event.key === " ") event.preventDefault();
    };
    window.addEventListener("keydown", down);
    window.addEventListener("keyup", up);
    return () => {
      window.removeEventListener("keydown", down);
      window.removeEventListener("keyup", up);
    };
  }, []);
}

/** Escape closes what is open over the class. */
export function useEscape(onEscape: () => void): void {
  const latest = useRef(onEscape);
  latest.current = onEscape;
  useLayoutEffect(() => {
    const down = (event: KeyboardEvent) => event.key === "Escape" && latest.current();
    window.addEventListener("keydown", down);
    return () => window.removeEventListener("keydown", down);
  }, []);
}
