/** Finds structs by id, in a document and in an update that has not been applied to it yet. */
import * as Y from "yjs";
import type { DecodedUpdate } from "#server/doc-log/updates.ts";

export type Struct = DecodedUpdate["structs"][number];
// biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
export type SharedType = Y.AbstractType<any>;

export const lastIdOf = ({ id, length }: { id: Y.ID; length: number }): Y.ID =>
  Y.createID(id.client, id.clock + length - 1);
const holdsId = (struct: Struct, { client, clock }: Y.ID): boolean =>
  client === struct.id.client && clock >= struct.id.clock && clock < struct.id.clock + struct.length;

export class StructView {
  private readonly doc: Y.Doc;
  /** Structs that the document does not have yet, by client, in order. */
  private readonly fresh = new Map<number, Struct[]>();
  private readonly nameless = new Map<Y.Item, Y.Item | undefined>();

  constructor(doc: Y.Doc, { structs }: DecodedUpdate) {
    this.doc = doc;
    for (const struct of structs) {
      const { client, clock } = struct.id;
      if (clock + struct.length <= Y.getState(doc.store, client)) continue;
      const list = this.fresh.get(client);
      if (list) list.push(struct);
      else this.fresh.set(client, [struct]);
    }
  }

  get freshClients(): number {
    return this.fresh.size;
  }
  get freshStructs(): number {
    let sum = 0;
    for (const list of this.fresh.values()) sum += list.length;
    return sum;
  }

  *brings(): Generator<Struct> {
    for (const list of this.fresh.values()) yield* list;
  }

  get(id: Y.ID | null): Struct | undefined {
    return id === null ? undefined : (this.stored(id) ?? this.brought(id));
  }

  stored(id: Y.ID): Struct | undefined {
    if (id.clock >= Y.getState(this.doc.store, id.client)) return undefined;
    const structs = this.doc.store.clients.get(id.client) ?? [];
    return structs[Y.findIndexSS(structs, id.clock)] as Struct | undefined;
  }

  brought(id: Y.ID): Struct | undefined {
    const structs = this.fresh.get(id.client) ?? [];
    let low = 0;
    for (let high = structs.length - 1; low < high; ) {
      const middle = (low + high + 1) >> 1;
      if ((structs[middle]?.id.clock ?? 0) <= id.clock) low = middle;
      else high = middle - 1;
    }
    const found = structs[low];
    return found && holdsId(found, id) ? found : undefined;
  }

  /** How many structs of a client the document has. */
  countOf = (client: number): number => this.doc.store.clients.get(client)?.length ?? 0;

  /** The shared type in the document that an item of the update names as its parent, itself or by its neighbour. */
  typeOf(item: Y.Item): SharedType | undefined {
    if (typeof item.parent === "string") return this.doc.share.get(item.parent);
    const held = item.parent instanceof Y.ID ? this.stored(item.parent) : undefined;
    if (held instanceof Y.Item) return held.content instanceof Y.ContentType ? held.content.type : undefined;
    const named = this.named(item);
    return named?.parent instanceof Y.AbstractType ? named.parent : undefined;
  }

  /** The item that names the parent and key of this one: itself, or its nearest neighbour that names them. */
  named(item: Y.Item): Y.Item | undefined {
    const passed: Y.Item[] = [];
    let at: Y.Item | undefined = item;
    while (at && at.parent === null && !this.nameless.has(at)) {
      passed.push(at);
      this.nameless.set(at, undefined);
      const beside: Struct | undefined = this.get(at.origin) ?? this.get(at.rightOrigin);
      at = beside instanceof Y.Item ? beside : undefined;
    }
    const found = at && (this.nameless.get(at) ?? (at.parent === null ? undefined : at));
    for (const one of passed) this.nameless.set(one, found);
    return found;
  }
}
