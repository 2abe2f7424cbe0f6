/**
 * Undo for the whole page: one's own acts only, the newest first, one act a step. Taking back the making of an item
 * takes it out instead of erasing it: somebody who is offline may be writing in it at this moment.
 */
import { ySyncPluginKey } from "@tiptap/y-tiptap";
import * as Y from "yjs";
import { parts } from "#lib/doc/layout.ts";
import { takeBackItem, type Writer } from "#lib/doc/write.ts";

/** Typing within this many milliseconds is one step. */
const CAPTURE_MS = 500;

export class PageUndo {
  readonly manager: Y.UndoManager;

  constructor(
    private readonly writer: Writer,
    onChange: () => void,
  ) {
    const p = parts(writer.doc);
    this.manager = new Y.UndoManager([p.items, p.head, p.title, p.notes], {
      trackedOrigins: new Set([writer.origin, ySyncPluginKey]),
      captureTimeout: CAPTURE_MS,
    });
    this.manager.on("stack-item-added", onChange);
    this.manager.on("stack-item-popped", onChange);
    this.manager.on("stack-cleared", onChange);
  }

  /** Runs `change` as a step of its own, never joined to the typing before or after it. */
  step(change: () => void): void {
    this.manager.stopCapturing();
    change();
    this.manager.stopCapturing();
  }

  get canUndo(): boolean {
    return this.manager.undoStack.length > 0;
  }
  get canRedo(): boolean {
    return this.manager.redoStack.length > 0;
  }

  undo(): void {
    const made = this.madeLast();
    if (made.length === 0) this.manager.undo();
    else this.takeBack(made);
  }

  redo(): void {
    this.manager.redo();
  }

  destroy(): void {
    this.manager.destroy();
  }

  /** Items that the newest step put into the document. An act that makes items does nothing else. */
  private madeLast(): string[] {
    const step = this.manager.undoStack.at(-1);
    if (!step) return [];
    return [...parts(this.writer.doc).items._map].flatMap(([id, { id: struct }]) =>
      Y.isDeleted(step.insertions, struct) ? [id] : [],
    );
  }

  /** One step of undo that the manager learns as its own, so that redo brings the items back. */
  private takeBack(ids: readonly string[]): void {
    const { manager, writer } = this;
    manager.undoStack.pop();
    manager.undoing = true;
    try {
      writer.doc.transact(() => {
        for (const id of ids) takeBackItem({ doc: writer.doc, origin: manager }, id);
      }, manager);
    } finally {
      manager.undoing = false;
    }
  }
}
