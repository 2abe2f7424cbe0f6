/**
 * Keeps lines that two people took from the first draft, or from a fix, at the same moment from standing there twice. Of two
 * pages that write one line in one script, the one with the lower client id keeps its copy, unless it was typed in since.
 */
import * as Y from "yjs";
import { KEPT_ELSEWHERE, type UndoStep } from "#lib/client/undo/undo-step.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readLine } from "#lib/doc/script.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";

interface Taken {
  readonly node: Y.XmlElement;
  readonly line: ScriptLine;
  /** The undo step that wrote it. */
  readonly step: UndoStep | undefined;
}

/** Lines that are watched, newest last. */
const WATCHED = 2000;

export class TakenTwice {
  private watched: Taken[] = [];
  private readonly doc: Y.Doc;
  private readonly manager: Y.UndoManager;

  constructor(doc: Y.Doc, manager: Y.UndoManager) {
    this.doc = doc;
    this.manager = manager;
    doc.on("afterTransaction", this.look);
  }

  /** Watches the lines that `write` adds to these items' scripts. */
  during(itemIds: readonly string[], write: () => boolean): boolean {
    const from = Y.getState(this.doc.store, this.doc.clientID);
    const done = write();
    const added = [...new Set(itemIds)].flatMap((id) => nodesOf(this.doc, id)).filter((node) => this.isNew(node, from));
    const step = this.manager.undoStack.at(-1);
    const lines = added.flatMap((node): Taken[] => {
      const line = readLine(node);
      return line ? [{ node, line, step }] : [];
    });
    this.watched = [...this.watched, ...lines].slice(-WATCHED);
    return done;
  }

  end(): void {
    this.doc.off("afterTransaction", this.look);
  }

  private isNew({ _item }: Y.XmlElement, from: number): boolean {
    return _item !== null && _item.id.client === this.doc.clientID && _item.id.clock >= from;
  }

  /** Without an undo step of its own: nobody did this, and to take it back would write the line twice again. */
  private readonly look = (transaction: Y.Transaction): void => {
    if (transaction.local || this.watched.length === 0) return;
    this.watched = this.watched.filter(({ node }) => !node._item?.deleted);
    const heard = new Map<unknown, readonly Y.XmlElement[]>(
      [...scriptsIn(transaction)].map((script) => [script, this.heardIn(script, transaction)]),
    );
    const twice = this.watched.filter(
      ({ node, line }) => says(node, line) && heard.get(node.parent)?.some((other) => says(other, line)),
    );
    if (twice.length === 0) return;
    this.watched = this.watched.filter((one) => !twice.includes(one));
    for (const { step } of twice) step?.meta.set(KEPT_ELSEWHERE, true);
    this.doc.transact(() => {
      for (const { node } of twice) drop(node);
    });
  };

  /** The lines that arrived just now and stay, since their page has a lower client id. */
  private heardIn(script: Y.XmlFragment, { beforeState }: Y.Transaction): Y.XmlElement[] {
    return linesOf(script).filter(({ _item }) => {
      if (_item === null || _item.id.client >= this.doc.clientID) return false;
      return _item.id.clock >= (beforeState.get(_item.id.client) ?? 0);
    });
  }
}

function* scriptsIn({ changed }: Y.Transaction): Generator<Y.XmlFragment> {
  for (const type of changed.keys())
    if ((type as unknown) instanceof Y.XmlFragment) yield type as unknown as Y.XmlFragment;
}

const linesOf = (script: Y.XmlFragment): Y.XmlElement[] =>
  script.toArray().filter((node) => node instanceof Y.XmlElement);

function nodesOf(doc: Y.Doc, itemId: string): Y.XmlElement[] {
  const script = planParts(doc).items.get(itemId)?.get("script");
  return script instanceof Y.XmlFragment ? linesOf(script) : [];
}

function says(node: Y.XmlElement, { kind, text }: ScriptLine): boolean {
  const read = readLine(node);
  return read?.kind === kind && read.text === text;
}

function drop(node: Y.XmlElement): void {
  const script = node.parent;
  if (script instanceof Y.XmlFragment) script.delete(script.toArray().indexOf(node), 1);
}
