/**
 * Undo for the whole page: one's own acts only, the newest first, one act a step. Taking back the making of an item
 * takes it out instead of erasing it: somebody who is offline may be writing in it at this moment.
 */
import * as Y from "yjs";
import type { Writer } from "#lib/doc/write.ts";

/** Typing within this many milliseconds is one step. */
const CAPTURE_MS = 500;

/** What of a document undo takes back. */
export interface UndoScopes {
  // biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
  readonly types: readonly Y.AbstractType<any>[];
  /** Items that are made and never erased. */
  readonly entries: Y.Map<Y.Map<unknown>>;
  /** Whose changes count as this page's beside the writer's own. */
  readonly origins: readonly unknown[];
  /** Takes the making of one of them back. */
  takeBack(writer: Writer, id: string): void;
}

export class PageUndo {
  readonly manager: Y.UndoManager;

  constructor(
    private readonly writer: Writer,
    onChange: () => void,
    private readonly scopes: UndoScopes,
  ) {
    this.manager = new Y.UndoManager([...scopes.types], {
      trackedOrigins: new Set([writer.origin, ...scopes.origins]),
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
    return [...this.scopes.entries._map].flatMap(([id, { id: struct }]) =>
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
        for (const id of ids) this.scopes.takeBack({ doc: writer.doc, origin: manager }, id);
      }, manager);
    } finally {
      manager.undoing = false;
    }
  }
}
