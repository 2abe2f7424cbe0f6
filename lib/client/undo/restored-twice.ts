/**
 * Keeps words that two people deleted at the same moment, and that both bring back by undo, from standing there twice.
 * yjs brings back a deleted piece as a new one right before it, named in the new one's `rightOrigin`, and knows only
 * what its own page brought back.
 */
import * as Y from "yjs";
import type { UndoStep } from "./undo-step.ts";

/** How far from a piece another page's copy of it is looked for, since both may have typed in between. */
const NEAR = 200;
/** Pieces this page brought back that are watched for another page's copy, newest last. */
const WATCHED = 500;

/** The piece that another page brought back for this deleted one; null when nobody has, or it was erased again. */
export function restoredByOther(taken: Y.Item, own: number): Y.Item | null {
  let at = taken.left;
  for (let n = 0; at !== null && n < NEAR; n++, at = at.left)
    if (!at.deleted && at.id.client !== own && Y.compareIDs(at.rightOrigin, taken.id) && sameWords(at, taken))
      return at;
  return null;
}

const sameWords = (a: Y.Item, b: Y.Item): boolean =>
  a.content instanceof Y.ContentString && b.content instanceof Y.ContentString && a.content.str === b.content.str;

/**
 * Watches what this page brought back. Of two pages that bring back one piece at once, the one with the lower client id
 * keeps its copy.
 */
export class RestoredTwice {
  private watched: { readonly taken: Y.Item; readonly mine: Y.ID }[] = [];
  private readonly doc: Y.Doc;

  constructor(doc: Y.Doc) {
    this.doc = doc;
    doc.on("afterTransaction", this.look);
  }

  /** Call after a step was undone or redone. */
  watch(step: UndoStep): void {
    this.doc.transact((transaction) =>
      Y.iterateDeletedStructs(transaction, step.deletions, (taken) => {
        if (taken instanceof Y.Item && taken.redone) this.watched.push({ taken, mine: taken.redone });
      }),
    );
    this.watched = this.watched.slice(-WATCHED);
  }

  end(): void {
    this.doc.off("afterTransaction", this.look);
  }

  private readonly look = (transaction: Y.Transaction): void => {
    if (transaction.local || this.watched.length === 0) return;
    const twice = this.watched.filter(({ taken }) => {
      const other = restoredByOther(taken, this.doc.clientID);
      return other !== null && other.id.client < this.doc.clientID;
    });
    if (twice.length === 0) return;
    this.watched = this.watched.filter((one) => !twice.includes(one));
    this.doc.transact((own) => {
      for (const { taken, mine } of twice) {
        const item = Y.getItem(this.doc.store, mine);
        if (item instanceof Y.Item && !item.deleted && sameWords(item, taken)) item.delete(own);
      }
    });
  };
}
