"use client";
/** Undo and redo for the whole page, the script included. A field with a draft of its own keeps its own undo. */
import { useEffect } from "react";
import { undoKey } from "./undo-key.ts";

interface Undoes {
  undo(): void;
  redo(): void;
}

export function useUndoKeys(session: Undoes): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const way = undoKey(event);
      if (way === null || hasOwnUndo(event.target)) return;
      event.preventDefault();
      event.stopPropagation();
      if (way === "redo") session.redo();
      else session.undo();
    };
    addEventListener("keydown", onKeyDown, true);
    return () => removeEventListener("keydown", onKeyDown, true);
  }, [session]);
}

/** Fields whose words are not yet, or never, part of the document. Those that change it as one types, or show it, are marked. */
function hasOwnUndo(target: EventTarget | null): boolean {
  const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
  const typed = isField && !["checkbox", "radio", "button", "range"].includes(target.type);
  return (
    typed && !("shared" in target.dataset) && target.dataset.undo !== "page" && target.closest("[data-live]") === null
  );
}
