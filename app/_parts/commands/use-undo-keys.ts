"use client";
/** Undo and redo for the whole page, the script included. A field with a draft of its own keeps its own undo. */
import { useEffect } from "react";
import { UNDO_COMMANDS } from "./common.ts";
import { keyHandler } from "./keys.ts";

export interface Undoes {
  undo(): void;
  redo(): void;
}

export function useUndoKeys(session: Undoes): void {
  useEffect(() => {
    const run = { undo: () => session.undo(), redo: () => session.redo() };
    const handle = keyHandler(UNDO_COMMANDS, "page", { run });
    const onKeyDown = (event: KeyboardEvent) => {
      if (!hasOwnUndo(event.target)) handle(event);
    };
    // While it is captured, so that no field undoes the same key once more.
    addEventListener("keydown", onKeyDown, true);
    return () => removeEventListener("keydown", onKeyDown, true);
  }, [session]);
}

/** Fields whose words are not, or not yet, part of the document. Those that write into it as one types are marked. */
function hasOwnUndo(target: EventTarget | null): boolean {
  const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
  const typed = isField && !["checkbox", "radio", "button", "range"].includes(target.type);
  return (
    typed && !("shared" in target.dataset) && target.dataset.undo !== "page" && target.closest("[data-live]") === null
  );
}
