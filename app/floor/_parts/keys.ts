/** Keys, pedals and presenters. Most pedals send Page Up and Page Down or arrows; presenters send "b" or "." to pause. */
import { useEffect, useRef } from "react";

export type KeyAct = "hold-or-go-on" | "next" | "back";

const KEYS: Readonly<Record<string, KeyAct>> = {
  " ": "hold-or-go-on",
  b: "hold-or-go-on",
  B: "hold-or-go-on",
  ".": "hold-or-go-on",
  ArrowRight: "next",
  ArrowDown: "next",
  PageDown: "next",
  ArrowLeft: "back",
  ArrowUp: "back",
  PageUp: "back",
};

/** As the ready screen lists them. */
export const KEY_LIST: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: "Space, B or full stop", does: "hold the class, and go on" },
  { keys: "Right, Down or Page Down", does: "next: into the change, then into the move" },
  { keys: "Left, Up or Page Up", does: "back to the start of this move; twice, to the one before" },
  { keys: "Tab and Enter", does: "every button, also end" },
];

/** One press, one act: a key that is held down does not repeat. Space never presses a focused button here. */
export function useFloorKeys(onAct: (act: KeyAct) => void): void {
  const latest = useRef(onAct);
  latest.current = onAct;
  useEffect(() => {
    const actOf = (event: KeyboardEvent) =>
      event.ctrlKey || event.metaKey || event.altKey ? undefined : KEYS[event.key];
    const down = (event: KeyboardEvent) => {
      const act = actOf(event);
      if (!act) return;
      event.preventDefault();
      if (!event.repeat) latest.current(act);
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
