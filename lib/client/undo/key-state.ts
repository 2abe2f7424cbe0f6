/**
 * What a key of a shared map shows, and whose act put it there.
 *
 * yjs 13.6 keeps a key as a chain of structs of which the last counts. A value that undo writes back is a new struct of
 * whoever pressed undo, so the struct alone would make it theirs. It therefore carries the name of the act it stands
 * for before the value: its content is `[act, value]`, of which maps show the last. Everybody's undo then recognises
 * its own act, whoever brought it back. An absence is written back as the value `undefined` with its name, even for a
 * key that was never there, so that undoing something else does not mistake it for somebody's act.
 */
import * as Y from "yjs";

export type AnyMap = Y.Map<unknown>;

export interface KeyState {
  /**
   * The act that counts: "CLIENT:CLOCK" of the struct that set the value; the same with "!" where that value was
   * removed; `NEVER` where the key was never there; null for a value that undo itself makes, the mark of being taken
   * out.
   */
  readonly of: string | null;
  /** Undefined where the key is absent. */
  readonly value: unknown;
}

const NEVER = "";
const ACT = /^(\d+:\d+!?)?$/;

const nameOf = ({ lastId }: Y.Item): string => `${lastId.client}:${lastId.clock}`;

export const keyStateNow = (map: AnyMap, key: string): KeyState => {
  const struct = map._map.get(key);
  return struct?.deleted === false ? living(struct) : absent(struct);
};

/**
 * What the key showed before a transaction of this page. Only valid while the transaction's handlers run; afterwards
 * the old content is gone.
 */
export function keyStateBefore(transaction: Y.Transaction, map: AnyMap, key: string): KeyState {
  let struct = map._map.get(key) ?? null;
  while (struct !== null && isFresh(transaction, struct)) struct = struct.left;
  if (struct === null) return absent(undefined);
  return !struct.deleted || Y.isDeleted(transaction.deleteSet, struct.id) ? living(struct) : absent(struct);
}

/** Whether a struct was made in the transaction. */
export const isFresh = (transaction: Y.Transaction, { id }: Y.Item): boolean =>
  id.clock >= (transaction.beforeState.get(id.client) ?? 0);

/** Makes a key show an earlier state again, under the name of the act that first put it there. */
export function restoreKeyState(transaction: Y.Transaction, map: AnyMap, key: string, { of, value }: KeyState): void {
  if (of === null) map.set(key, value);
  else if (map._map.has(key)) {
    const { clientID, store } = transaction.doc;
    const left = map._map.get(key) ?? null;
    const id = Y.createID(clientID, Y.getState(store, clientID));
    const content = new Y.ContentAny([of, value]);
    new Y.Item(id, left, left?.lastId ?? null, null, null, map, key, content).integrate(transaction, 0);
  }
}

/** The page whose act a state shows, by its client id. */
export const actorOf = ({ of }: KeyState): number | undefined =>
  of === null || of === NEVER || of.endsWith("!") ? undefined : Number(of.split(":")[0]);

/** For an absent key: the page whose value was removed, by its client id. */
export const erasedBy = ({ of }: KeyState): number | undefined =>
  of?.endsWith("!") ? Number(of.split(":")[0]) : undefined;

/** The page that wrote what a key shows; undefined where the key is absent, since removing a value leaves no name. */
export function writerOf(map: AnyMap, key: string): number | undefined {
  const struct = map._map.get(key);
  return struct?.deleted === false ? struct.id.client : undefined;
}

function living(struct: Y.Item): KeyState {
  const content = struct.content.getContent();
  const [act] = content;
  const named = content.length === 2 && typeof act === "string" && ACT.test(act);
  return { of: named ? act : nameOf(struct), value: content.at(-1) };
}

const absent = (struct: Y.Item | undefined): KeyState => ({
  of: struct ? `${nameOf(struct)}!` : NEVER,
  value: undefined,
});
