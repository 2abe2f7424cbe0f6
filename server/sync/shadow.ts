/**
 * How the lists of a document would look with the items of an update in them, without changing the document. Pieces are only
 * created where something is looked at. An item is placed right behind its left neighbour, never further away than yjs
 * would put it.
 */
import * as Y from "yjs";
import { lastIdOf, type Struct, type StructView } from "./struct-view.ts";

/** A struct, or the part of one that an insertion has split. */
export interface StructPiece {
  readonly client: number;
  readonly clock: number;
  length: number;
  readonly of: Struct;
  /** Undefined until it is looked up. */
  right: StructPiece | null | undefined;
}

/** Is the id in this piece? */
export const isIn = (piece: StructPiece, id: Y.ID): boolean =>
  id.client === piece.client && id.clock >= piece.clock && id.clock < piece.clock + piece.length;

/** The left neighbour of a piece when it was written. */
export function originOf({ of, client, clock }: StructPiece): Y.ID | null {
  if (clock > of.id.clock) return Y.createID(client, clock - 1);
  return of instanceof Y.Item ? of.origin : null;
}

export class Shadow {
  private readonly view: StructView;
  private readonly pieces = new Map<Struct, StructPiece[]>();
  private readonly starts = new Map<string, StructPiece | null>();
  /** The length of each key's chain, as it was found. */
  private readonly chains = new Map<string, number>();
  /** Steps that yjs takes to the start of a key's chain, for each item without a left neighbour. */
  climbed = 0;

  constructor(view: StructView) {
    this.view = view;
  }

  /** Where an item goes: behind the piece of its left neighbour, or at the start of a list, given by its name. */
  behind(item: Y.Item): StructPiece | string | undefined {
    if (item.origin) return this.endingAt(item.origin);
    const named = this.view.named(item);
    if (!named) return undefined;
    const start = `${nameOf(named.parent)} ${named.parentSub ?? ""}`;
    if (!this.starts.has(start)) this.starts.set(start, this.firstOf(item, start, named.parentSub));
    const chain = this.chains.get(start);
    if (chain !== undefined) this.chains.set(start, chain + 1);
    this.climbed += chain ?? 0;
    return start;
  }

  rightOf(place: StructPiece | string): StructPiece | null {
    if (typeof place === "string") return this.starts.get(place) ?? null;
    if (place.right === undefined) {
      const next = place.of instanceof Y.Item ? place.of.right : null;
      place.right = next ? this.first(next) : null;
    }
    return place.right;
  }

  put(item: Y.Item, place: StructPiece | string): void {
    const { client, clock } = item.id;
    const piece: StructPiece = { client, clock, length: item.length, of: item, right: this.rightOf(place) };
    this.pieces.set(item, [piece]);
    if (typeof place === "string") this.starts.set(place, piece);
    else place.right = piece;
  }

  /** The piece that ends with an id, split there if it is longer. Undefined for an unknown id. */
  private endingAt(id: Y.ID): StructPiece | undefined {
    const struct = this.view.get(id);
    if (!struct) return undefined;
    const pieces = this.piecesOf(struct);
    const index = pieces.findLastIndex((piece) => piece.clock <= id.clock);
    const piece = pieces[index];
    if (!piece) return undefined;
    const kept = id.clock - piece.clock + 1;
    if (kept === piece.length) return piece;
    const right = this.rightOf(piece);
    const rest: StructPiece = { ...piece, clock: id.clock + 1, length: piece.length - kept, right };
    pieces.splice(index + 1, 0, rest);
    piece.length = kept;
    piece.right = rest;
    return piece;
  }

  /** The piece that contains an id. */
  pieceAt(id: Y.ID): StructPiece | undefined {
    const struct = this.view.get(id);
    return struct && this.piecesOf(struct).findLast((piece) => piece.clock <= id.clock);
  }

  private first(struct: Struct): StructPiece | null {
    return this.piecesOf(struct)[0] ?? null;
  }

  private piecesOf(struct: Struct): StructPiece[] {
    const found = this.pieces.get(struct);
    if (found) return found;
    const { id, length } = struct;
    const made: StructPiece[] = [{ client: id.client, clock: id.clock, length, of: struct, right: undefined }];
    this.pieces.set(struct, made);
    return made;
  }

  /** The first piece of a list, or of a key's chain. */
  private firstOf(item: Y.Item, start: string, key: string | null): StructPiece | null {
    const type = this.view.typeOf(item);
    let first = (key === null ? type?._start : type?._map.get(key)) ?? null;
    let length = 0;
    for (; first?.left; first = first.left) length++;
    if (key !== null) this.chains.set(start, length);
    return first && this.first(first);
  }
}

/** The name of a parent as in an update: a root by its name, any other by the item that holds it. */
function nameOf(parent: Y.Item["parent"]): string {
  if (typeof parent === "string") return parent;
  if (parent instanceof Y.ID) return `${parent.client}:${parent.clock}`;
  if (!parent) return "";
  if (parent._item) return nameOf(parent._item.id as Y.ID);
  return [...(parent.doc?.share ?? [])].find(([, shared]) => shared === parent)?.[0] ?? "";
}

/** Whether an insertion behind this id splits a struct: the id is not the last one in it. */
export function cuts(view: StructView, id: Y.ID): boolean {
  const struct = view.stored(id);
  return struct !== undefined && lastIdOf(struct).clock > id.clock;
}
