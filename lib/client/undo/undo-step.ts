/** A step of yjs's own undo manager, and the direction it is run in. */
import type * as Y from "yjs";

export type UndoStep = Y.UndoManager["undoStack"][number];
export type UndoDirection = "undo" | "redo";
