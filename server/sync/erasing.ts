/**
 * Tells an update that would erase or replace what a document keeps for good (INV-07), before it touches the document:
 * once applied, only reading the room again from disk could take it back. Costs what the update holds, not what the
 * document holds; what the document knows already is passed over, since every page that joins offers all of it again.
 *
 * yjs 13.6: a key of a map is a chain of structs of which the last counts. It is taken away by a deletion, and replaced
 * by a struct that names the map and the key, or one that names a struct of that chain as its neighbour.
 */
import * as Y from "yjs";
import type { ProtectionOf } from "#lib/doc/protected-parts.ts";
import { deletedStructs } from "./deleted-structs.ts";
import type { DecodedUpdate } from "./updates.ts";

// biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
type AnyType = Y.AbstractType<any>;
type Place = Y.Item["parent"];

export function erases(doc: Y.Doc, update: DecodedUpdate, holdOf: ProtectionOf): boolean {
  return update.structs.some((struct) => replaces(doc, struct, holdOf)) || deletes(doc, update.ds, holdOf);
}

function replaces(doc: Y.Doc, struct: DecodedUpdate["structs"][number], holdOf: ProtectionOf): boolean {
  if (!(struct instanceof Y.Item)) return false;
  const { client, clock } = struct.id;
  const known = Y.getState(doc.store, client);
  if (clock + struct.length <= known) return false;
  const own = clock < known ? Y.createID(client, known - 1) : null;
  if ([own, struct.origin, struct.rightOrigin].some((id) => isHeld(storedStruct(doc, id), holdOf))) return true;
  const parent = typeAt(doc, struct.parent);
  return parent !== undefined && struct.parentSub !== null && isTaken(parent, struct.parentSub, holdOf);
}

/** Whether a page may put nothing under this key: it is never a page's to write, or something living stands there. */
function isTaken(parent: AnyType, key: string, holdOf: ProtectionOf): boolean {
  const hold = holdOf(parent, key);
  return hold === "sealed" || (hold === "made-once" && parent._map.get(key)?.deleted === false);
}

function deletes(doc: Y.Doc, ds: DecodedUpdate["ds"], holdOf: ProtectionOf): boolean {
  for (const struct of deletedStructs(doc, ds)) if (isHeld(struct, holdOf)) return true;
  return false;
}

/** Whether a struct of the document belongs to a key that is held and whose value lives. */
function isHeld(struct: unknown, holdOf: ProtectionOf): boolean {
  if (!(struct instanceof Y.Item) || struct.parentSub === null) return false;
  return struct.parent instanceof Y.AbstractType && isTaken(struct.parent, struct.parentSub, holdOf);
}

function storedStruct(doc: Y.Doc, id: Y.ID | null): unknown {
  if (id === null || id.clock >= Y.getState(doc.store, id.client)) return undefined;
  const structs = doc.store.clients.get(id.client) ?? [];
  return structs[Y.findIndexSS(structs, id.clock)];
}

/** The shared type that a struct names as its parent: by the root's name, or by the struct that holds it. */
function typeAt(doc: Y.Doc, parent: Place): AnyType | undefined {
  if (typeof parent === "string") return doc.share.get(parent);
  if (!(parent instanceof Y.ID)) return undefined;
  const holder = storedStruct(doc, parent);
  return holder instanceof Y.Item && holder.content instanceof Y.ContentType ? holder.content.type : undefined;
}
