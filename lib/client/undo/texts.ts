/**
 * The part that stays with yjs's own undo: texts and scripts. Plain keys are removed from its steps, and a step stays
 * one step.
 */
import * as Y from "yjs";
import { restoredByOther } from "./restored-twice.ts";
import type { UndoDirection, UndoStep } from "./undo-step.ts";

export const hasTexts = ({ insertions, deletions }: UndoStep): boolean =>
  insertions.clients.size > 0 || deletions.clients.size > 0;

/** Leaves in a step only what was written in texts that existed before it. */
export function keepTexts(step: UndoStep, transaction: Y.Transaction): void {
  const { insertions, deletions } = step;
  const fresh = ({ id }: Y.Item) => Y.isDeleted(insertions, id);
  step.insertions = filtered(insertions, transaction, (item) => !isOfKeys(item, fresh));
  step.deletions = filtered(deletions, transaction, (item) => {
    const texts = !isOfKeys(item, fresh);
    // yjs keeps deleted content that undo may bring back; for keys it no longer has to.
    if (!texts) item.keep = false;
    return texts;
  });
}

/**
 * A key's own struct, or anything inside an entry that the step itself made, since undo marks that entry as taken out
 * as a whole.
 */
function isOfKeys(item: Y.Item, fresh: (item: Y.Item) => boolean): boolean {
  for (let at: Y.Item | null = item; at !== null; at = parentItem(at))
    if (at.parent instanceof Y.Map && (at === item || fresh(at))) return true;
  return false;
}

const parentItem = ({ parent }: Y.Item): Y.Item | null => (parent instanceof Y.AbstractType ? parent._item : null);

function filtered(set: UndoStep["insertions"], transaction: Y.Transaction, keeps: (item: Y.Item) => boolean) {
  const left = Y.createDeleteSet();
  Y.iterateDeletedStructs(transaction, set, (struct) => {
    if (!(struct instanceof Y.Item) || !keeps(struct)) return;
    const { client, clock } = struct.id;
    const ranges = left.clients.get(client) ?? [];
    ranges.push({ clock, len: struct.length });
    left.clients.set(client, ranges);
  });
  return Y.mergeDeleteSets([left]);
}

/**
 * Undoes the texts of one step, which is no longer on either stack. When a step has nothing left to do the manager
 * would go on to the step below and skip that step's keys, so it is shown only this one.
 */
export function popTexts(manager: Y.UndoManager, way: UndoDirection, step: UndoStep): boolean {
  const { undoStack, redoStack, doc } = manager;
  doc.transact((transaction) => {
    step.deletions = filtered(step.deletions, transaction, (item) => restoredByOther(item, doc.clientID) === null);
  });
  if (!hasTexts(step)) return false;
  const others = [...undoStack, ...redoStack];
  const [from, to] = way === "undo" ? (["undoStack", "redoStack"] as const) : (["redoStack", "undoStack"] as const);
  manager[from] = [step];
  manager[to] = [...others];
  try {
    return manager[way]() !== null;
  } finally {
    const added = manager[to].slice(others.length);
    manager.undoStack = undoStack;
    manager.redoStack = redoStack;
    manager[to].push(...added);
  }
}
