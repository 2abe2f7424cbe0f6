/** What writers do in the property tests: the program's own acts, chosen by numbers, with every typed letter unique. */
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { leaveTie, setComesAfter, splitTie, tieItems } from "#lib/doc/order-constraints.ts";
import { labelOf, orderedIds, readDeleted, readItemById, scriptOf } from "#lib/doc/read.ts";
import { reorderItems } from "#lib/doc/reorder.ts";
import { lineIdsOfItem, takeProposal } from "#lib/doc/take-proposal.ts";
import {
  addScriptLine,
  deleteItem,
  duplicateItem,
  insertItem,
  insertItems,
  moveItem,
  restoreItem,
  setHead,
  setItemField,
  setSpring,
  setText,
  type Writer,
} from "#lib/doc/write.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { partsOf } from "#lib/proposal/of-edit.ts";

/** One writer's act: which kind, on what, where. */
export interface Act {
  readonly kind: number;
  readonly on: number;
  readonly to: number;
}

/** What must still exist at the end. */
export class Ledger {
  readonly letters: string[] = [];
  readonly ids: string[] = [];
  moves = 0;
  private ties = 0;
  private next = 0xe000;

  /** A letter that nobody else ever types (Unicode's private use area: one code unit). */
  letter(): string {
    const letter = String.fromCharCode(this.next++);
    this.letters.push(letter);
    return letter;
  }
  tie(): string {
    return `t${this.ties++}`;
  }
  id(): string {
    const id = `n${this.ids.length}`;
    this.ids.push(id);
    return id;
  }
}

const ACTS: readonly ((w: Writer, act: Act, ledger: Ledger) => void)[] = [
  (w, act, ledger) => insertItem(w, place(w, act.to), newMove(ledger)),
  (w, act, ledger) => insertItems(w, place(w, act.to), [newMove(ledger), newMove(ledger)]),
  (w, act, ledger) => {
    const id = item(w, act.on);
    if (id !== undefined) moveItem(w, id, place(w, act.to));
    ledger.moves++;
  },
  (w, act, ledger) => typeInScript(w, act, ledger),
  (w, act, ledger) => typeInScript(w, act, ledger),
  (w, act, ledger) => {
    const id = item(w, act.on);
    if (id !== undefined && scriptOf(w.doc, id)) addScriptLine(w, id, { kind: "form", text: ledger.letter() });
  },
  (w, act, ledger) => typeIn(w, planParts(w.doc).title, act, ledger),
  (w, act, ledger) => {
    const label = labelOf(w.doc, item(w, act.on) ?? "");
    if (label) typeIn(w, label, act, ledger);
  },
  (w, act) => onItem(w, act, (id) => setItemField(w, id, "seconds", 1 + (act.to % 300))),
  (w, act) => onItem(w, act, (id) => setSpring(w, id, "firm", act.to % 4)),
  (w, act) => onItem(w, act, (id) => deleteItem(w, id, 1)),
  (w, act) => {
    const gone = readDeleted(w.doc);
    const id = gone[act.on % Math.max(1, gone.length)]?.id;
    if (id !== undefined) restoreItem(w, id);
  },
  (w, act, ledger) => onItem(w, act, (id) => copy(w, id, ledger)),
  (w, act) => setHead(w, "lengthSeconds", 60 + (act.to % 1000)),
  (w, act, ledger) => {
    const ids = orderedIds(w.doc);
    const at = 1 + (act.on % Math.max(1, ids.length - 1));
    tieItems(w, ids[at - 1] ?? "", ids[at] ?? "", ledger.tie());
  },
  (w, act, ledger) => onItem(w, act, (id) => splitTie(w, id, ledger.tie())),
  (w, act) => onItem(w, act, (id) => leaveTie(w, id)),
  (w, act) => onItem(w, act, (id) => setComesAfter(w, id, item(w, act.to) ?? "", act.on % 3 > 0)),
  (w, act) => onItem(w, act, (id) => setItemField(w, id, "locked", act.to % 2 === 0 ? true : undefined)),
  (w, act, ledger) => {
    const ids = orderedIds(w.doc);
    const from = act.on % Math.max(1, ids.length);
    reorderItems(w, ids[from - 1] ?? null, ids.slice(from, from + 2 + (act.to % 4)).reverse());
    ledger.moves++;
  },
  (w, act, ledger) => onItem(w, act, (id) => takeTwoParts(w, id, act, ledger)),
];
export const ACT_KINDS = ACTS.length;

export function doAct(doc: Y.Doc, act: Act, ledger: Ledger): void {
  ACTS[act.kind % ACTS.length]?.({ doc, origin: "act" }, act, ledger);
}

/** A proposal of a time and of one more line, as it is taken the moment it is made. */
function takeTwoParts(w: Writer, itemId: string, act: Act, ledger: Ledger): void {
  const item = readItemById(w.doc, itemId);
  if (item?.kind !== "move") return;
  const line = { kind: "form", text: ledger.letter() } as const;
  const after: MoveItem = { ...item, seconds: 1 + (act.to % 300), script: [...(item.script ?? []), line] };
  const parts = partsOf({ items: [item] }, { items: [after] }, itemId, { ids: lineIdsOfItem(w.doc, itemId) });
  takeProposal(w, { id: `p${ledger.letters.length}`, itemId, parts });
}

function newMove(ledger: Ledger): MoveItem {
  return { id: ledger.id(), kind: "move", move: "kneeling-row", side: "both", seconds: 60, springs: {} };
}

/** Only items without words, since a copy would repeat their letters. */
function copy(w: Writer, id: string, ledger: Ledger): void {
  const words = `${labelOf(w.doc, id)?.toString() ?? ""}${scriptOf(w.doc, id)?.toString() ?? ""}`;
  if (!/[\ue000-\uf8ff]/.test(words)) duplicateItem(w, id, ledger.id());
}

const item = (w: Writer, n: number): string | undefined => {
  const ids = orderedIds(w.doc);
  return ids[n % Math.max(1, ids.length)];
};
/** An item to come after, or the top. */
const place = (w: Writer, n: number): string | null => {
  const ids = orderedIds(w.doc);
  return ids[(n % (ids.length + 1)) - 1] ?? null;
};
function onItem(w: Writer, act: Act, change: (id: string) => void): void {
  const id = item(w, act.on);
  if (id !== undefined) change(id);
}

/** As a text field does: the whole new text, with one new letter. */
function typeIn(w: Writer, text: Y.Text, act: Act, ledger: Ledger): void {
  const now = text.toString();
  const at = act.to % (now.length + 1);
  setText(w, text, now.slice(0, at) + ledger.letter() + now.slice(at));
}

/** As the editor does: letters inserted in the line, which may still be empty. */
function typeInScript(w: Writer, act: Act, ledger: Ledger): void {
  onItem(w, act, (id) => {
    const script = scriptOf(w.doc, id);
    const line = script?.get(act.to % Math.max(1, script.length));
    if (!(line instanceof Y.XmlElement)) return;
    w.doc.transact(() => {
      const text = line.length > 0 ? line.get(0) : undefined;
      if (text instanceof Y.XmlText) text.insert(act.to % (text.length + 1), ledger.letter());
      else line.insert(0, [new Y.XmlText(ledger.letter())]);
    }, w.origin);
  });
}
