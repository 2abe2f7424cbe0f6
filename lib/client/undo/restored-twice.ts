/**
 * Words that two people took out at the same moment, and that both bring back, stand there once. yjs brings back a deleted
 * piece as a new one right before it, named in the new one's `rightOrigin`, and knows only of its own page's bringing back.
 */
import * as Y from "yjs";
import type { UndoStep } from "./undo-step.ts";

/** How far from a piece another's copy of it is looked for: what both typed in its place lies between. */
const NEAR = 200;
/** Pieces of one's own bringing back that are watched for another's, newest last. */
const WATCHED = 500;

/** The piece that another page has brought back for this deleted one; null when nobody has, or somebody erased it again. */
export function restoredByOther(taken: Y.Item, own: number): Y.Item | null {
  let at = taken.left;
  for (let n = 0; at !== null && n < NEAR; n++, at = at.left)
    if (!at.deleted && at.id.client !== own && Y.compareIDs(at.rightOrigin, taken.id) && sameWords(at, taken))
      return at;
  return null;
}

const sameWords = (a: Y.Item, b: Y.Item): boolean =>
  a.content instanceof Y.ContentString && b.content instanceof Y.ContentString && a.content.str === b.content.str;

/** Watches what this page brought back: of two who bring back one piece at once, the page of the lower client id does. */
export class RestoredTwice {
  private watched: { readonly taken: Y.Item; readonly mine: Y.ID }[] = [];
  private readonly doc: Y.Doc;

  constructor(doc: Y.Doc) {
    this.doc = doc;
    doc.on("afterTransaction", this.look);
  }

  /** Call after a step was taken back. */
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
