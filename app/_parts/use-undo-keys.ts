"use client";
/** Undo and redo for the whole page, the script included. A field with a draft of its own keeps its own undo. */
import { useEffect } from "react";
import { undoKey } from "./undo-key.ts";

interface Undoes {
  takeBack(): void;
  bringBack(): void;
}

export function useUndoKeys(session: Undoes): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const way = undoKey(event);
      if (way === null || hasOwnUndo(event.target)) return;
      event.preventDefault();
      event.stopPropagation();
      if (way === "redo") session.bringBack();
      else session.takeBack();
    };
    addEventListener("keydown", onKeyDown, true);
    return () => removeEventListener("keydown", onKeyDown, true);
  }, [session]);
}

/** Fields whose words are not part of the document, or not yet. Fields that change it at every letter, or show it, are marked. */
function hasOwnUndo(target: EventTarget | null): boolean {
  const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
  const typed = isField && !["checkbox", "radio", "button", "range"].includes(target.type);
  return (
    typed && !("shared" in target.dataset) && target.dataset.undo !== "page" && target.closest("[data-live]") === null
  );
}
