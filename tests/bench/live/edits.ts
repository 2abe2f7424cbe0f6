/** One writer's edits, as updates made in advance from the initial plan: letters, times, an item's place. */
import * as Y from "yjs";
import { orderedIds, scriptOf } from "#lib/doc/read.ts";
import { moveItem, setItemField } from "#lib/doc/write.ts";

export interface Edit {
  readonly update: Uint8Array;
  /** The writer's clock after the edit: whoever has reached it has the edit. */
  readonly clock: number;
}

export interface Writer {
  readonly clientId: number;
  readonly edits: readonly Edit[];
}

export type Habit = (doc: Y.Doc, turn: number) => void;

const MOVE_EVERY = 20;
const TIME_EVERY = 10;

/** Types in one script after another; every tenth edit changes a time, every twentieth moves an item. */
export const writes: Habit = (doc, turn) => {
  const ids = orderedIds(doc);
  const id = ids[(doc.clientID + Math.floor(turn / MOVE_EVERY)) % ids.length] ?? "";
  const at = { doc, origin: "bench" };
  if (turn % MOVE_EVERY === 7) moveItem(at, id, ids[turn % ids.length] ?? null);
  else if (turn % TIME_EVERY === 3) setItemField(at, id, "seconds", 30 + (turn % 60));
  else type(doc, id, turn);
};

/** Changes one time, a different one each time. */
export const changesTimes: Habit = (doc, turn) => {
  const ids = orderedIds(doc);
  setItemField({ doc, origin: "bench" }, ids[(turn * 3) % ids.length] ?? "", "seconds", 30 + ((turn * 5) % 60));
};

/** A letter anywhere in any line, so that the document breaks into as many pieces as letters. */
export const scatters: Habit = (doc, turn) => {
  const lines = orderedIds(doc).flatMap((id) => scriptOf(doc, id)?.toArray() ?? []);
  const line = lines[(turn * 31) % lines.length];
  const text = line instanceof Y.XmlElement ? line.get(0) : undefined;
  if (text instanceof Y.XmlText) text.insert((turn * 17) % (text.length + 1), "a");
};

/** A letter at the end of the item's second line; an item without one gets a new time instead. */
function type(doc: Y.Doc, id: string, turn: number): void {
  const line = scriptOf(doc, id)?.get(1);
  const text = line instanceof Y.XmlElement ? line.get(0) : undefined;
  if (text instanceof Y.XmlText) text.insert(text.length, "a");
  else changesTimes(doc, turn);
}

/** `count` edits of one writer. A turn without a change is left out, since nobody could receive it. */
export function writerOf(base: Uint8Array, count: number, habit: Habit, firstTurn = 0): Writer {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, base);
  const edits: Edit[] = [];
  doc.on("update", (update: Uint8Array) => edits.push({ update, clock: Y.getState(doc.store, doc.clientID) }));
  for (let turn = firstTurn; edits.length < count; turn++) habit(doc, turn);
  const { clientID: clientId } = doc;
  doc.destroy();
  return { clientId, edits: edits.slice(0, count) };
}
