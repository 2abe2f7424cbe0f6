"use client";
/** Undo and redo for the whole page, the script included. A field with a draft of its own keeps its own undo. */
import { useEffect } from "react";

interface Undoes {
  takeBack(): void;
  bringBack(): void;
}

export function useUndoKeys(session: Undoes): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const key = event.key.toLowerCase();
      if (!(event.ctrlKey || event.metaKey) || event.altKey || (key !== "z" && key !== "y")) return;
      if (hasOwnUndo(event.target)) return;
      event.preventDefault();
      event.stopPropagation();
      if (key === "y" || event.shiftKey) session.bringBack();
      else session.takeBack();
    };
    addEventListener("keydown", onKeyDown, true);
    return () => removeEventListener("keydown", onKeyDown, true);
  }, [session]);
}

/** Fields whose words are not yet, or never, part of the document. Those that change it as one types are marked. */
function hasOwnUndo(target: EventTarget | null): boolean {
  const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
  const typed = isField && !["checkbox", "radio", "button", "range"].includes(target.type);
  return typed && !("shared" in target.dataset) && target.closest("[data-live]") === null;
}
