/**
 * Which plain values a transaction touched, what they are now, and whose they are. A key of a shared map has one winner,
 * and yjs knows which page wrote it.
 */
import * as Y from "yjs";
import type { ValueAt, ValuePlaces } from "./description.ts";

/** A value's place, as a key of a map of ours. */
export const placeKey = ({ id, key }: Pick<ValueAt, "id" | "key">): string => JSON.stringify([id, key]);

export class Values {
  private readonly places: ValuePlaces;

  constructor(places: ValuePlaces) {
    this.places = places;
  }

  touchedBy({ changed }: Y.Transaction): ValueAt[] {
    const touched: ValueAt[] = [];
    for (const [type, keys] of changed) {
      if (type instanceof Y.Text) touched.push(...this.textTouched(type));
      if (!(type instanceof Y.Map)) continue;
      const id = this.idOf(type);
      if (id === undefined) continue;
      for (const key of keys) if (key !== null) touched.push(this.now({ id, key }));
    }
    return touched;
  }

  /** What `run` changes in the document, each value as it is then; and what `run` answers. */
  touchedDuring<T>(doc: Y.Doc, run: () => T): { touched: ValueAt[]; answer: T } {
    const touched = new Map<string, ValueAt>();
    const collect = (transaction: Y.Transaction) => {
      for (const at of this.touchedBy(transaction)) touched.set(placeKey(at), at);
    };
    doc.on("afterTransaction", collect);
    try {
      const answer = run();
      return { touched: [...touched.values()], answer };
    } finally {
      doc.off("afterTransaction", collect);
    }
  }

  now({ id, key }: Pick<ValueAt, "id" | "key">): ValueAt {
    const value = this.raw(id, key);
    return { id, key, value: value instanceof Y.Text ? value.toString() : value };
  }

  /**
   * Client id of the page that wrote a value last; undefined where nobody can tell, as with a key that was taken away.
   * `since`: what was known when this page wrote it. Of a text: another page that has written in it since.
   */
  writerOf({ id, key }: Pick<ValueAt, "id" | "key">, since: ReadonlyMap<number, number>): number | undefined {
    const value = this.raw(id, key);
    if (value instanceof Y.Text) return newestWriter(value, since);
    const last = this.mapOf(id)?._map.get(key);
    return last && !last.deleted ? last.id.client : undefined;
  }

  private raw(id: string, key: string): unknown {
    return (id === "" ? this.places.texts[key] : undefined) ?? this.mapOf(id)?.get(key);
  }

  private mapOf(id: string): Y.Map<unknown> | null {
    return id === "" ? this.places.root : (this.places.entries.get(id) ?? null);
  }

  private idOf(map: Y.Map<unknown>): string | undefined {
    if (map === this.places.root) return "";
    return map.parent === this.places.entries ? (map._item?.parentSub ?? undefined) : undefined;
  }

  private textTouched(text: Y.Text): ValueAt[] {
    const root = Object.entries(this.places.texts).find(([, other]) => other === text);
    if (root) return [this.now({ id: "", key: root[0] })];
    const id = text.parent instanceof Y.Map ? this.idOf(text.parent) : undefined;
    const key = text._item?.parentSub;
    return id !== undefined && key ? [this.now({ id, key })] : [];
  }
}

function newestWriter(text: Y.Text, since: ReadonlyMap<number, number>): number | undefined {
  const own = text.doc?.clientID;
  for (let item = text._start; item !== null; item = item.right) {
    const { client, clock } = item.id;
    if (client !== own && clock + item.length > (since.get(client) ?? 0)) return client;
  }
  return undefined;
}
