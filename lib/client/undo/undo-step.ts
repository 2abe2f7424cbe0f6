/** A step of yjs's own undo manager, and which way it is run. */
import type * as Y from "yjs";

export type UndoStep = Y.UndoManager["undoStack"][number];
export type UndoDirection = "undo" | "redo";
