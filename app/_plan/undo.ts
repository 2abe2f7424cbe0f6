/**
 * Undo for the whole page: one's own acts only, the newest first, one act a step. Taking back the making of an item
 * takes it out instead of erasing it once others have written in it: their words can always be put back.
 */
import { ySyncPluginKey } from "@tiptap/y-tiptap";
import * as Y from "yjs";
import { parts } from "#lib/doc/layout.ts";
import { deleteItem, type Writer } from "#lib/doc/write.ts";

/** Typing within this many milliseconds is one step. */
const CAPTURE_MS = 500;
const MADE = "made";

export class PageUndo {
  readonly manager: Y.UndoManager;

  constructor(
    private readonly writer: Writer,
    private readonly now: () => number,
    onChange: () => void,
  ) {
    const p = parts(writer.doc);
    this.manager = new Y.UndoManager([p.items, p.head, p.title, p.notes, p.carried], {
      trackedOrigins: new Set([writer.origin, ySyncPluginKey]),
      captureTimeout: CAPTURE_MS,
    });
    this.manager.on("stack-item-added", onChange);
    this.manager.on("stack-item-popped", onChange);
    this.manager.on("stack-cleared", onChange);
  }

  /** Runs `change` as a step of its own, never joined to the typing before or after it. */
  step(change: () => void, made: readonly string[] = []): void {
    this.manager.stopCapturing();
    change();
    const top = this.manager.undoStack.at(-1);
    if (made.length > 0 && top) top.meta.set(MADE, made);
    this.manager.stopCapturing();
  }

  get canUndo(): boolean {
    return this.manager.undoStack.length > 0;
  }
  get canRedo(): boolean {
    return this.manager.redoStack.length > 0;
  }

  undo(): void {
    const made: unknown = this.manager.undoStack.at(-1)?.meta.get(MADE);
    const ids = Array.isArray(made) ? made.filter((id): id is string => typeof id === "string") : [];
    if (!ids.some((id) => this.othersWroteIn(id))) {
      this.manager.undo();
      return;
    }
    this.manager.undoStack.pop();
    this.step(() => {
      for (const id of ids) deleteItem(this.writer, id, this.now());
    });
  }

  redo(): void {
    this.manager.redo();
  }

  destroy(): void {
    this.manager.destroy();
  }

  private othersWroteIn(id: string): boolean {
    const map = parts(this.writer.doc).items.get(id);
    return map !== undefined && hasForeignPart(map, this.writer.doc.clientID);
  }
}

/** Whether anything living inside a shared type was written by another client. */
// biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
function hasForeignPart(type: Y.AbstractType<any>, self: number): boolean {
  const firsts: (Y.Item | null)[] = [type._start, ...type._map.values()];
  for (const first of firsts) {
    for (let item = first; item !== null; item = item.right) {
      if (item.deleted) continue;
      if (item.id.client !== self) return true;
      if (item.content instanceof Y.ContentType && hasForeignPart(item.content.type, self)) return true;
    }
  }
  return false;
}
