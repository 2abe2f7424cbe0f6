/**
 * Which plain values a transaction touched, what they are now, and whose they are. A key of a shared map has one
 * winner, and yjs knows which page wrote it.
 */
import * as Y from "yjs";
import type { ValueAt, ValuePlaces } from "./description.ts";

/** A value's place as a key for our own maps. */
export const placeKey = ({ id, key }: Pick<ValueAt, "id" | "key">): string => JSON.stringify([id, key]);

type Place = Pick<ValueAt, "id" | "key">;

interface StructId {
  readonly client: number;
  readonly clock: number;
}

interface Known {
  readonly since: ReadonlyMap<number, number>;
  readonly own: readonly number[];
}

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

  /** The values `run` changes in the document, each as it is afterwards, and what `run` returns. */
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

  now({ id, key }: Place): ValueAt {
    const value = this.raw(id, key);
    return { id, key, value: value instanceof Y.Text ? value.toString() : value };
  }

  /**
   * Client id of the page that last wrote a value; undefined where nobody can tell, as with a key that was removed.
   * `since`: what was known when this person wrote it, on the pages with the ids `own`. For a text: another page that
   * has written in it since.
   */
  writerOf({ id, key }: Place, { since, own }: Known): number | undefined {
    const value = this.raw(id, key);
    if (value instanceof Y.Text) return newestWriter(value, since, own);
    const last = this.mapOf(id)?._map.get(this.places.countsAt?.({ id, key }) ?? key);
    return last && !last.deleted ? last.id.client : undefined;
  }

  isText({ id, key }: Place): boolean {
    return this.raw(id, key) instanceof Y.Text;
  }

  /** The struct that holds a key's value; null where the key is not there. */
  structOf({ id, key }: Place): StructId | null {
    const last = this.mapOf(id)?._map.get(key);
    return last && !last.deleted ? { client: last.id.client, clock: last.id.clock } : null;
  }

  /**
   * Whether what a key holds now was set by somebody who had read `struct` there. True where that cannot be told, as
   * with a key that was removed; false where the key still holds `struct` and another value counts in its place.
   */
  followed({ id, key }: Place, struct: StructId | null): boolean {
    const last = this.mapOf(id)?._map.get(key);
    if (struct === null || !last) return true;
    if (isIn(last, struct)) return false;
    for (let item: Y.Item | null = last; item !== null; ) {
      const { origin }: Y.Item = item;
      if (origin === null) return false;
      if (origin.client === struct.client && origin.clock >= struct.clock) return true;
      item = item.left;
      while (item !== null && !isIn(item, origin)) item = item.left;
    }
    return false;
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

const isIn = ({ id, length }: Y.Item, { client, clock }: StructId): boolean =>
  id.client === client && clock >= id.clock && clock < id.clock + length;

function newestWriter(text: Y.Text, since: ReadonlyMap<number, number>, own: readonly number[]): number | undefined {
  for (let item = text._start; item !== null; item = item.right) {
    const { client, clock } = item.id;
    if (!own.includes(client) && clock + item.length > (since.get(client) ?? 0)) return client;
  }
  return undefined;
}
